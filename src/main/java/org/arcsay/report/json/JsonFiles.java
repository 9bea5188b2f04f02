package org.arcsay.report.json;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.io.IOException;
import java.io.OutputStream;
import tools.jackson.core.JacksonException;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.core.util.DefaultIndenter;
import tools.jackson.core.util.DefaultPrettyPrinter;
import tools.jackson.databind.MapperFeature;
import tools.jackson.databind.json.JsonMapper;

/** Writes records as JSON that is the same to the byte for the same record on every machine. */
public final class JsonFiles {
    private static final DefaultIndenter LINES = new DefaultIndenter("  ", "\n");
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .disable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
            .disable(StreamWriteFeature.AUTO_CLOSE_TARGET)
            .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
            .changeDefaultPropertyInclusion(incl -> incl.withValueInclusion(JsonInclude.Include.NON_EMPTY))
            .defaultPrettyPrinter(
                    new DefaultPrettyPrinter().withObjectIndenter(LINES).withArrayIndenter(LINES))
            .build();

    private JsonFiles() {}

    /**
     * Writes UTF-8 text, leaving out empty lists, empty texts and absent values, in the order of the record's components.
     *
     * @throws IOException when the stream cannot take it
     */
    public static void write(Object content, OutputStream out) throws IOException {
        try {
            MAPPER.writerWithDefaultPrettyPrinter().writeValue(out, content);
        } catch (JacksonException e) {
            throw e.getCause() instanceof IOException cause ? cause : new IOException(e);
        }
        out.write('\n');
        out.flush();
    }
}
