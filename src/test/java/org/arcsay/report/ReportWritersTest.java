package org.arcsay.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Optional;
import org.arcsay.report.content.DemoCase;
import org.arcsay.report.content.Report;
import org.arcsay.store.StoreException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class ReportWritersTest {
    private static final Report REPORT = DemoCase.report();

    @TempDir
    private Path folder;

    @ParameterizedTest
    @EnumSource(Format.class)
    void aFileHoldsWhatTheStreamGetsAndNothingElseIsLeft(Format format) throws Exception {
        Path file = folder.resolve("report." + format.extension());
        Files.writeString(file, "older");
        ByteArrayOutputStream stream = new ByteArrayOutputStream();

        ReportWriters.standard().write(REPORT, format, file);
        ReportWriters.standard().write(REPORT, format, stream);

        assertArrayEquals(stream.toByteArray(), Files.readAllBytes(file));
        try (var files = Files.list(folder)) {
            assertEquals(List.of(file), files.toList());
        }
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
    }

    @Test
    void aFolderInTheWayIsLeftAloneAndTheMessageNamesIt() throws Exception {
        Path file = Files.createDirectories(folder.resolve("report.pdf/inside")).getParent();

        StoreException refused = assertThrows(
                StoreException.class, () -> ReportWriters.standard().write(REPORT, Format.PDF, file));

        assertTrue(refused.getMessage().contains(file.toString()), refused.getMessage());
        assertTrue(Files.isDirectory(file.resolve("inside")));
    }

    @Test
    void theNameOfAFileTellsItsFormat() {
        assertEquals(Optional.of(Format.FHIR), Format.ofFile(Path.of("folder", "Visit.FHIR.json")));
        assertEquals(Optional.of(Format.JSON), Format.ofFile(Path.of("visit.json")));
        assertEquals(Optional.empty(), Format.ofFile(Path.of("pdf")));
    }
}
