package org.arcsay.report.content;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** What a writer writes, in memory. */
public final class Written {
    private Written() {}

    public static byte[] bytes(ReportWriter writer, Report report) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            writer.write(report, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    public static String text(ReportWriter writer, Report report) {
        return new String(bytes(writer, report), StandardCharsets.UTF_8);
    }
}
