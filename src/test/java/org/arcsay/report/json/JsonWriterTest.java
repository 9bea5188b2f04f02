package org.arcsay.report.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.arcsay.report.content.DemoCase;
import org.arcsay.report.content.Golden;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.VisitScript;
import org.arcsay.report.content.Written;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JsonWriterTest {
    private static final String DEMO = Written.text(new JsonWriter(), DemoCase.report());

    @Test
    void theDemoCaseReadsAsBefore() {
        Golden.assertText("report.json", Written.bytes(new JsonWriter(), DemoCase.report()));
    }

    @Test
    void theDemoCaseFollowsThePublishedSchema() throws IOException {
        assertEquals(List.of(), errors(DEMO));
    }

    @Test
    void anEmptyVisitFollowsThePublishedSchema() throws IOException {
        Report report = Report.of(
                DemoCase.source(List.of(new VisitScript(1, "demo-08", "2026-04-01T08:00:00+02:00").record())));

        assertEquals(List.of(), errors(Written.text(new JsonWriter(), report)));
    }

    /** The schema must be able to say no, or agreeing with it means nothing. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '>',
            value = {
                "'\"kind\" : \"deficit\"' > '\"kind\" : \"minus\"'",
                "'\"number\" : 58' > '\"number\" : -58'",
                "'\"number\" : 58' > '\"number\" : 581'",
                "'\"side\" : \"left\"' > '\"side\" : \"both\"'",
                "'\"patient\" : \"demo-07\"' > '\"patient\" : \"Jo Doe\"'",
                "'\"unit\" : \"deg\"' > '\"unit\" : \"mm\"'",
                "'\"format\" : \"arcsay-report\",' > ''",
                "'\"version\" : 1,' > '\"version\" : 1, \"name\" : \"x\",'"
            })
    void theSchemaRefusesWhatIsWrong(String right, String wrong) throws IOException {
        String damaged = DEMO.replaceFirst(Pattern.quote(right), wrong);

        assertFalse(damaged.equals(DEMO), "the change must hit something");
        assertFalse(errors(damaged).isEmpty(), wrong);
    }

    private static List<String> errors(String json) throws IOException {
        String text = Files.readString(Path.of("docs/schema/arcsay-report-1.schema.json"));
        Schema schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(text, InputFormat.JSON);
        return schema
                .validate(
                        json,
                        InputFormat.JSON,
                        context -> context.executionConfig(config -> config.formatAssertionsEnabled(true)))
                .stream()
                .map(Error::toString)
                .toList();
    }
}
