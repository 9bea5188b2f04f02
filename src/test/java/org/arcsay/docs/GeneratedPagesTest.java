package org.arcsay.docs;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.arcsay.validate.RuleTables;
import org.arcsay.validate.Validator;
import org.junit.jupiter.api.Test;

/** The pages made from rules and tables are the ones checked in; -Darcsay.docs.write=true writes them anew. */
class GeneratedPagesTest {
    @Test
    void rulesPage() throws IOException {
        RuleTables tables = RuleTables.shipped();
        same("rules.md", RulesPage.markdown(Validator.with(tables), tables));
    }

    @Test
    void numbersPage() throws IOException {
        same("numbers.md", NumbersPage.markdown(RuleTables.shipped()));
    }

    private static void same(String name, String page) throws IOException {
        Path file = Path.of("docs", name);
        if (Boolean.getBoolean("arcsay.docs.write")) {
            Files.writeString(file, page);
        }
        assertEquals(
                page,
                Files.readString(file),
                "docs/" + name
                        + " no longer fits the rules and tables; run the tests once with -Darcsay.docs.write=true and look at the change");
    }
}
