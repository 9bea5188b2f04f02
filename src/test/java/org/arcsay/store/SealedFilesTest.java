package org.arcsay.store;

import static org.arcsay.store.Records.PATIENT;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import org.arcsay.model.PatientCode;
import org.arcsay.store.StoreException.Problem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SealedFilesTest {
    private static final char[] PASSWORD = "a däy at the 海".toCharArray();
    private static final Instant NOW = Instant.parse("2026-03-02T12:00:00Z");

    @TempDir
    private Path folder;

    /** PBKDF2-HMAC-SHA256 test vectors of RFC 7914, section 11; OpenSSL gives the same. */
    @Test
    void keysAreDerivedAsTheStandardSays() throws Exception {
        assertEquals(
                "55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc"
                        + "49ca9cccf179b645991664b39d77ef317c71b845b1e30bd509112041d3a19783",
                derived("passwd", "salt", 1));
        assertEquals(
                "4ddcd8f60b98be21830cee5ef22701f9641a4418d04c0414aeff08876b34ab56"
                        + "a1d425a1225833549adb841b51c9b3176a272bdebba1d078478f62b397f33c8d",
                derived("Password", "NaCl", 80_000));
        assertTrue(Sealing.ITERATIONS >= 600_000);
    }

    private static String derived(String password, String salt, int iterations) throws Exception {
        return HexFormat.of()
                .formatHex(Sealing.derive(
                        password.toCharArray(), salt.getBytes(StandardCharsets.US_ASCII), iterations, 64));
    }

    @Test
    void aSealedBackupRestoresEverything() throws Exception {
        Path file = folder.resolve("arcsay.db");
        Path sealed = folder.resolve("stick/records.arcseal");
        Records records;
        try (VisitStore store = VisitStore.open(file)) {
            records = Records.fill(store, 21, 120);
            SealedFiles.backUp(store, sealed, PASSWORD);
            StoreException taken =
                    assertThrows(StoreException.class, () -> SealedFiles.backUp(store, sealed, PASSWORD));
            assertEquals(Problem.REFUSED, taken.problem());
        }
        assertFalse(text(sealed).contains(PATIENT.text()));
        Files.delete(file);
        SealedFiles.restore(sealed, file, PASSWORD, NOW);
        try (VisitStore store = VisitStore.open(file)) {
            assertEquals(records.written(), store.history(records.visit().id()));
        }
        try (var files = Files.list(folder)) {
            assertTrue(files.noneMatch(left -> left.toString().contains("plain")), "no plain copy stays");
        }
    }

    @Test
    void aPlainCopyThatACrashLeftIsRemovedAtTheNextStart() throws Exception {
        Path left = Files.writeString(folder.resolve("arcsay.db.plain" + DurableFiles.UNFINISHED), "readings");
        Path other = Files.writeString(folder.resolve("report.pdf" + DurableFiles.UNFINISHED), "somebody else's");
        VisitStore.open(folder.resolve("arcsay.db")).close();
        assertFalse(Files.exists(left));
        assertTrue(Files.exists(other));
    }

    @Test
    void aPatientsJournalIsExportedWholeAndReadsBackEqual() throws Exception {
        Path sealed = folder.resolve("patient.arcseal");
        Path opened = folder.resolve("patient.json");
        Records records;
        try (VisitStore store = VisitStore.open(folder.resolve("arcsay.db"))) {
            records = Records.fill(store, 22, 150);
            store.begin(new PatientCode("OTHER-1"), Records.START, "");
            SealedFiles.export(store, PATIENT, sealed, PASSWORD);
            StoreException unknown = assertThrows(
                    StoreException.class,
                    () -> SealedFiles.export(store, new PatientCode("X"), folder.resolve("x"), PASSWORD));
            assertEquals(Problem.REFUSED, unknown.problem());
        }
        SealedFiles.unseal(sealed, opened, PASSWORD);
        assertFalse(Files.readString(opened).contains("OTHER-1"));
        PatientExport export = PatientExport.mapper().readValue(opened.toFile(), PatientExport.class);
        assertEquals(PATIENT.text(), export.patient());
        assertEquals(records.visit().startedAt(), export.visits().get(0).startedAt());
        assertEquals(records.written(), export.visits().get(0).events());
    }

    @Test
    void aWrongPasswordIsToldFromDamage() throws Exception {
        Path sealed = sealed(200_000);
        Problem wrong = problem(sealed, "a day at the sea".toCharArray());
        assertEquals(Problem.WRONG_PASSWORD, wrong);
        byte[] whole = Files.readAllBytes(sealed);
        Random random = new Random(23);
        for (int i = 0; i < 40; i++) {
            byte[] flipped = whole.clone();
            int at = i < 20 ? random.nextInt(Sealing.HEADER) : random.nextInt(flipped.length);
            flipped[at] ^= (byte) (1 << random.nextInt(8));
            Files.write(sealed, flipped);
            Problem problem = problem(sealed, PASSWORD);
            assertTrue(
                    problem == Problem.DAMAGED || at < 8 && problem == Problem.NOT_OURS, problem + " for byte " + at);
        }
    }

    @Test
    void aCutSealedFileIsDamagedWhereverItIsCut() throws Exception {
        Path sealed = sealed(2 * Sealing.CHUNK);
        byte[] whole = Files.readAllBytes(sealed);
        int oneChunk = Sealing.CHUNK + Sealing.TAG;
        for (int length : new int[] {
            9, Sealing.HEADER - 1, Sealing.HEADER, Sealing.HEADER + 5, Sealing.HEADER + oneChunk, whole.length - 1
        }) {
            Files.write(sealed, Arrays.copyOf(whole, length));
            assertEquals(Problem.DAMAGED, problem(sealed, PASSWORD), "cut to " + length);
        }
        Files.write(sealed, Arrays.copyOf(whole, whole.length + 1));
        assertEquals(Problem.DAMAGED, problem(sealed, PASSWORD), "one byte more");
    }

    @Test
    void sizesAroundAChunkComeBackEqual() throws Exception {
        for (int size : List.of(0, 1, Sealing.CHUNK - 1, Sealing.CHUNK, Sealing.CHUNK + 1)) {
            Path sealed = sealed(size);
            Path opened = folder.resolve("opened" + size);
            SealedFiles.unseal(sealed, opened, PASSWORD);
            assertArrayEquals(bytes(size), Files.readAllBytes(opened));
        }
    }

    @Test
    void composedAndDecomposedLettersAreTheSamePassword() throws Exception {
        Path sealed = sealed(10);
        String decomposed = java.text.Normalizer.normalize(new String(PASSWORD), java.text.Normalizer.Form.NFD);
        assertFalse(decomposed.equals(new String(PASSWORD)));
        SealedFiles.unseal(sealed, folder.resolve("opened"), decomposed.toCharArray());
    }

    @Test
    void aShortPasswordIsRefused() throws Exception {
        try (VisitStore store = VisitStore.open(folder.resolve("arcsay.db"))) {
            StoreException refused = assertThrows(
                    StoreException.class,
                    () -> SealedFiles.backUp(store, folder.resolve("b"), "elevenchars".toCharArray()));
            assertEquals(Problem.REFUSED, refused.problem());
        }
    }

    private Path sealed(int size) throws Exception {
        Path sealed = folder.resolve("sealed" + size);
        SealedFiles.seal(new ByteArrayInputStream(bytes(size)), sealed, Sealing.fresh(PASSWORD, 1000));
        return sealed;
    }

    private static byte[] bytes(int size) {
        byte[] bytes = new byte[size];
        new Random(size).nextBytes(bytes);
        return bytes;
    }

    private Problem problem(Path sealed, char[] password) {
        Path opened = folder.resolve("opened");
        StoreException refused = assertThrows(StoreException.class, () -> SealedFiles.unseal(sealed, opened, password));
        assertFalse(Files.exists(opened), "nothing is taken from a file that is not whole");
        return refused.problem();
    }

    private static String text(Path path) throws Exception {
        return Files.readString(path, StandardCharsets.ISO_8859_1);
    }
}
