package org.arcsay.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import java.util.stream.Stream;
import org.arcsay.audio.WavSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Care for the records as its user meets it, with a visit that was really heard. */
class RecordsCommandsTest {
    private static final Path SEVENTY = Path.of("src/test/resources/speech/joe-joe-000.wav");
    private static final String PASSWORD = "a day at the sea";

    private static final FileAttribute<?> OWNER_ONLY =
            PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------"));

    @TempDir
    private static Path heard;

    @TempDir
    private Path home;

    @TempDir
    private Path elsewhere;

    private Shell shell;

    /** Listens once for all tests; each begins with a copy of what was stored. */
    @BeforeAll
    static void hearAVisit() throws Exception {
        capture(new Shell(heard)).mustSay(ExitCode.OK, "right MP flexion, active: 70 degrees");
    }

    @BeforeEach
    void aHeardVisit() throws Exception {
        for (String folder : List.of("backups", "config")) {
            Files.createDirectory(home.resolve(folder), OWNER_ONLY);
        }
        Files.createSymbolicLink(home.resolve("cache"), heard.resolve("cache"));
        try (Stream<Path> files = Files.walk(heard)) {
            for (Path file : files.filter(Files::isRegularFile)
                    .filter(f -> !f.startsWith(heard.resolve("cache")))
                    .toList()) {
                Files.copy(file, home.resolve(heard.relativize(file)), StandardCopyOption.COPY_ATTRIBUTES);
            }
        }
        shell = new Shell(home);
    }

    @AfterEach
    void leaveTheSharedCache() throws IOException {
        Files.delete(home.resolve("cache"));
    }

    private Shell.Answer capture(String... more) {
        return capture(shell, more);
    }

    private static Shell.Answer capture(Shell shell, String... more) {
        String[] usual = {"capture", "--patient", "T-1", "--new", "--side", "right", "--wav", SEVENTY.toString()};
        return shell.arcsay(Stream.of(usual, more).flatMap(Stream::of).toArray(String[]::new));
    }

    private String show() {
        return shell.arcsay("show", "1", "--history").mustSay(ExitCode.OK).out();
    }

    private List<Path> backups() throws IOException {
        try (Stream<Path> files = Files.list(home.resolve("backups"))) {
            return files.toList();
        }
    }

    @Test
    void aSessionLeavesACheckedBackupAndAnotherOneOnlyWhenSomethingWasStored() throws Exception {
        assertEquals(1, backups().size());
        assertTrue(backups().get(0).toString().endsWith("-daily.db"));
        capture();
        assertEquals(1, backups().size(), "the newest of the day");
        shell.arcsay("backup").mustSay(ExitCode.OK, "-asked.db");
        assertEquals(2, backups().size());
        shell.arcsay("check-records").mustSay(ExitCode.OK, "1 patients, 2 visits", "good     daily", "good     asked");
        shell.arcsay("backup", "--list").mustSay(ExitCode.OK, "good     asked");
    }

    @Test
    void everyChangeIsTold() {
        shell.arcsay("history", "1")
                .mustSay(
                        ExitCode.OK,
                        "entry 1 taken: right MP flexion, active: 70 degrees",
                        "heard \"",
                        "grammar ",
                        "ended");
        JsonNode changes = JsonMapper.builder()
                .build()
                .readTree(shell.arcsay("history", "1", "--json")
                        .mustSay(ExitCode.OK)
                        .out());
        assertEquals("taken", changes.get(0).get("event").asString());
        assertEquals(1, changes.get(0).get("entry").asInt());
        assertFalse(changes.get(0).get("versions").get("rules").asString().isEmpty());
        shell.arcsay("history", "7").mustSay(ExitCode.UNKNOWN, "no visit 7");
    }

    @Test
    void restoringAsksAndKeepsWhatWasThere() throws Exception {
        String before = show();
        String backup = shell.arcsay("backup").mustSay(ExitCode.OK).out().strip();
        capture();
        shell.arcsay("restore", backup).mustSay(ExitCode.NOT_CONFIRMED, "Nothing was replaced", "--replace");
        shell.typing("yes").arcsay("restore", backup).mustSay(ExitCode.NOT_CONFIRMED, "Nothing was replaced");
        shell.arcsay("show", "2").mustSay(ExitCode.OK);
        Shell.Answer restored =
                shell.typing("replace").arcsay("restore", backup).mustSay(ExitCode.OK, "kept in");
        shell.arcsay("show", "2").mustSay(ExitCode.UNKNOWN);
        assertEquals(before, show());
        String kept = restored.out().replaceAll("(?s).*kept in (.*)\\.\\R", "$1");
        shell.arcsay("restore", kept + "/arcsay.db", "--replace").mustSay(ExitCode.OK);
        shell.arcsay("show", "2").mustSay(ExitCode.OK);
        new Shell(elsewhere).arcsay("restore", backup).mustSay(ExitCode.OK, "Restored");
        new Shell(elsewhere).arcsay("show", "1").mustSay(ExitCode.OK, "70 degrees");
        shell.arcsay("restore", home.resolve("none.db").toString()).mustSay(ExitCode.RECORDS, "There is no file");
        shell.arcsay("restore").mustSay(ExitCode.USAGE);
    }

    @Test
    void aDamagedFileCanOnlyBeLookedAtAndTheLastGoodBackupIsOffered() throws Exception {
        String before = show();
        Path records = home.resolve("arcsay.db");
        spoil(records);
        byte[] damaged = Files.readAllBytes(records);
        String[] offer = {"is damaged", "'arcsay list'", "'arcsay restore --last-good'", "last good backup was made"};
        shell.arcsay("backup").mustSay(ExitCode.RECORDS, offer);
        shell.arcsay("check-records").mustSay(ExitCode.RECORDS, offer);
        capture().mustSay(ExitCode.RECORDS, offer);
        shell.arcsay("review", "1").mustSay(ExitCode.RECORDS, offer);
        shell.arcsay("erase-patient", "T-1", "--again", "T-1").mustSay(ExitCode.RECORDS, offer);
        assertArrayEquals(damaged, Files.readAllBytes(records), "never repaired silently");
        shell.arcsay("restore", "--last-good", "--replace").mustSay(ExitCode.OK, "kept in");
        assertEquals(before, show());
    }

    /** Writes rubbish over every page but the first two. */
    private static void spoil(Path file) throws IOException {
        try (RandomAccessFile raw = new RandomAccessFile(file.toFile(), "rw")) {
            for (long at = 2 * 4096; at < raw.length(); at += 4096) {
                raw.seek(at);
                raw.write(new byte[] {(byte) 0xA5, (byte) 0xA5, (byte) 0xA5, (byte) 0xA5});
            }
        }
    }

    @Test
    void aPatientTravelsUnderAPassword() throws Exception {
        String before = show();
        Path sealed = elsewhere.resolve("t-1.sealed");
        String[] export = {"export-patient", "T-1", sealed.toString()};
        shell.arcsay(export).mustSay(ExitCode.USAGE, "no terminal", "--password-file");
        shell.typing(PASSWORD, PASSWORD + "!").arcsay(export).mustSay(ExitCode.USAGE, "differ");
        shell.typing("short", "short").arcsay(export).mustSay(ExitCode.RECORDS, "at least 12");
        assertFalse(Files.exists(sealed));
        shell.typing(PASSWORD, PASSWORD).arcsay(export).mustSay(ExitCode.OK, "t-1.sealed");
        shell.typing(PASSWORD, PASSWORD).arcsay(export).mustSay(ExitCode.RECORDS, "already");
        shell.arcsay("export-patient", "T-9", sealed.toString()).mustSay(ExitCode.UNKNOWN, "Known are T-1");

        String[] open = {"open-export", sealed.toString()};
        shell.typing("another password")
                .arcsay(open)
                .mustSay(ExitCode.PASSWORD, "password does not open", "looks whole");
        shell.typing(PASSWORD).arcsay(open).mustSay(ExitCode.OK, "\"T-1\"", "\"taken\"");
        shell.typing(PASSWORD).arcsay("import-patient", sealed.toString()).mustSay(ExitCode.RECORDS, "already");
        Path fresh = Files.createDirectory(elsewhere.resolve("fresh"));
        new Shell(fresh)
                .typing(PASSWORD)
                .arcsay("import-patient", sealed.toString())
                .mustSay(ExitCode.OK, "1 visits");
        assertEquals(before, new Shell(fresh).arcsay("show", "1", "--history").out());

        byte[] bytes = Files.readAllBytes(sealed);
        bytes[bytes.length / 2] ^= 1;
        Files.write(sealed, bytes);
        shell.typing(PASSWORD).arcsay(open).mustSay(ExitCode.RECORDS, "damaged", "password is not the reason");
        Path other = Files.writeString(elsewhere.resolve("notes.txt"), "a shopping list");
        shell.arcsay("open-export", other.toString()).mustSay(ExitCode.RECORDS, "not a sealed file");
    }

    @Test
    void aSealedBackupIsRestoredWithAPasswordFromAFile() throws Exception {
        String before = show();
        Path password = Files.writeString(elsewhere.resolve("pass"), PASSWORD + "\nnot part of it\n");
        Path sealed = elsewhere.resolve("records.sealed");
        shell.arcsay("backup", "--sealed", sealed.toString(), "--password-file", password.toString())
                .mustSay(ExitCode.OK, "records.sealed", "without it nobody");
        Path fresh = Files.createDirectory(elsewhere.resolve("fresh"));
        Shell other = new Shell(fresh);
        other.typing("a wrong password").arcsay("restore", sealed.toString()).mustSay(ExitCode.PASSWORD);
        other.arcsay("list").mustSay(ExitCode.UNKNOWN);
        other.typing(PASSWORD).arcsay("restore", sealed.toString()).mustSay(ExitCode.OK);
        assertEquals(before, other.arcsay("show", "1", "--history").out());
        shell.typing(PASSWORD).arcsay("open-export", sealed.toString()).mustSay(ExitCode.RECORDS, "arcsay restore");
        Path export = elsewhere.resolve("t-1.sealed");
        shell.typing(PASSWORD, PASSWORD)
                .arcsay("export-patient", "T-1", export.toString())
                .mustSay(ExitCode.OK);
        shell.typing(PASSWORD)
                .arcsay("restore", export.toString(), "--replace")
                .mustSay(ExitCode.RECORDS, "open-export", "Nothing was replaced");
        assertEquals(before, show());
    }

    @Test
    void erasingNeedsTheCodeAgainAndLeavesNothing() throws Exception {
        capture("--keep-sound").mustSay(ExitCode.OK);
        Path draft = Files.createDirectories(home.resolve("drafts")).resolve("visit-2.json");
        Files.writeString(draft, "[]");
        Files.writeString(home.resolve("drafts/visit-1.json.unreadable"), "seventy");
        shell.arcsay("erase-patient", "T-1").mustSay(ExitCode.NOT_CONFIRMED, "Nothing was erased");
        shell.typing("T-2").arcsay("erase-patient", "T-1").mustSay(ExitCode.NOT_CONFIRMED, "another code");
        shell.arcsay("show", "2").mustSay(ExitCode.OK, "SOUND KEPT");
        shell.arcsay("erase-patient", "T-9", "--again", "T-9").mustSay(ExitCode.UNKNOWN, "T-9");
        shell.typing("T-1").arcsay("erase-patient", "T-1").mustSay(ExitCode.OK, "2 visits", "still hold", "-daily.db");
        shell.arcsay("list", "--patient", "T-1").mustSay(ExitCode.UNKNOWN);
        for (Path backup : backups()) {
            Files.delete(backup);
        }
        try (Stream<Path> files = Files.walk(home)) {
            for (Path file : files.filter(Files::isRegularFile)
                    .filter(f -> !f.startsWith(home.resolve("cache")))
                    .toList()) {
                String content = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
                assertFalse(content.contains("seventy") || content.contains("T-1"), file + " still holds the patient");
                assertFalse(file.toString().endsWith(".wav"), file.toString());
            }
        }
    }

    @Test
    void soundIsKeptOnlyWhenAskedForAndIsMarkedAndPurged() throws Exception {
        assertFalse(Files.exists(home.resolve("sound")), "no sound is kept by default");
        capture("--keep-sound").mustSay(ExitCode.OK, "KEEPING THE SOUND", "SOUND KEPT in");
        Path kept = home.resolve("sound/visit-2.wav");
        assertArrayEquals(frames(SEVENTY), frames(kept));
        shell.arcsay("list").mustSay(ExitCode.OK, "SOUND KEPT");
        shell.arcsay("show", "2").mustSay(ExitCode.OK, "SOUND KEPT in " + kept);
        shell.arcsay("show", "2", "--json").mustSay(ExitCode.OK, kept.toString());
        assertFalse(shell.arcsay("show", "1").out().contains("SOUND"));
        shell.arcsay("check").mustSay(ExitCode.OK, "1 recordings kept");
        shell.arcsay("purge-sound", "1").mustSay(ExitCode.UNKNOWN, "No sound of visit 1");
        shell.arcsay("purge-sound", "2").mustSay(ExitCode.OK, "Removed 1 recording.");
        assertFalse(Files.exists(kept));
        shell.arcsay("show", "2").mustSay(ExitCode.OK, "70 degrees");
        capture("--keep-sound");
        capture("--keep-sound");
        shell.arcsay("purge-sound", "--all").mustSay(ExitCode.OK, "Removed 2 recordings.");
        shell.arcsay("purge-sound").mustSay(ExitCode.USAGE);
    }

    private static short[] frames(Path wav) throws Exception {
        try (WavSource source = WavSource.open(wav)) {
            short[] all = new short[1 << 20];
            short[] block = new short[4000];
            int length = 0;
            for (int read = source.read(block); read >= 0; read = source.read(block)) {
                System.arraycopy(block, 0, all, length, read);
                length += read;
            }
            return Arrays.copyOf(all, length);
        }
    }

    @Test
    void aSecondProgramIsToldWhoHoldsTheRecords() throws Exception {
        try (var store = org.arcsay.store.VisitStore.open(home.resolve("arcsay.db"))) {
            String holder = "process " + ProcessHandle.current().pid();
            for (String[] command : new String[][] {
                {"backup"}, {"erase-patient", "T-1", "--again", "T-1"}, {"restore", "--last-good", "--replace"}
            }) {
                shell.arcsay(command).mustSay(ExitCode.RECORDS, "already open", holder);
            }
            for (String command : List.of("show", "history")) {
                shell.arcsay(command, "1").mustSay(ExitCode.OK, "70 degrees");
            }
            shell.arcsay("check-records").mustSay(ExitCode.OK);
            assertEquals(1, store.patients().size());
        }
    }

    /** What was dictated stands in the records and nowhere else, and libraries are told to write everything they log. */
    @Test
    void neitherLogsNorOtherFilesHoldWhatWasDictated() throws Exception {
        List<String> logged = new ArrayList<>();
        Handler listening = new Handler() {
            @Override
            public void publish(LogRecord record) {
                logged.add(record.getMessage() + Arrays.toString(record.getParameters()) + record.getThrown());
            }

            @Override
            public void flush() {}

            @Override
            public void close() {}
        };
        Logger root = Logger.getLogger("");
        Level before = root.getLevel();
        root.setLevel(Level.ALL);
        listening.setLevel(Level.ALL);
        root.addHandler(listening);
        try {
            capture();
            shell.arcsay("show", "1");
            shell.arcsay("check-records");
            spoil(home.resolve("arcsay.db"));
            capture();
            shell.arcsay("history", "1");
            Logger.getLogger("org.arcsay").fine("listening");
        } finally {
            root.removeHandler(listening);
            root.setLevel(before);
        }
        assertTrue(logged.toString().contains("listening"), "the logs are listened to");
        assertFalse(logged.toString().contains("seventy"), logged::toString);
        assertFalse(logged.toString().contains("T-1"), logged::toString);
        try (Stream<Path> files = Files.walk(home.toRealPath())) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                String content = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
                if (content.contains("seventy")) {
                    assertTrue(file.toString().endsWith(".db"), file + " holds what was dictated");
                }
            }
        }
    }

    @Test
    void everythingInTheDataFolderIsForItsOwnerOnly() throws Exception {
        Assumptions.assumeTrue(
                home.getFileSystem().supportedFileAttributeViews().contains("posix"));
        capture("--keep-sound");
        shell.arcsay("backup");
        shell.typing(PASSWORD, PASSWORD)
                .arcsay("export-patient", "T-1", home.resolve("out.sealed").toString());
        shell.typing(PASSWORD)
                .arcsay(
                        "open-export",
                        home.resolve("out.sealed").toString(),
                        "--to",
                        home.resolve("o.json").toString())
                .mustSay(ExitCode.OK);
        shell.arcsay("restore", "--last-good", "--replace").mustSay(ExitCode.OK);
        Set<PosixFilePermission> ownerOnly = PosixFilePermissions.fromString("rwx------");
        int seen = 0;
        try (Stream<Path> files = Files.walk(home)) {
            for (Path file : files.filter(f -> !f.equals(home) && !f.startsWith(home.resolve("cache")))
                    .toList()) {
                assertTrue(ownerOnly.containsAll(Files.getPosixFilePermissions(file)), file + " is open to others");
                seen++;
            }
        }
        assertTrue(seen > 10, "only " + seen + " files and folders were looked at");
    }
}
