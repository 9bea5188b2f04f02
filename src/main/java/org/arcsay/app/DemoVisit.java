package org.arcsay.app;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.arcsay.analysis.Customs;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.audio.AudioException;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.PatientCode;
import org.arcsay.parser.Parser;
import org.arcsay.review.MeasuringStart;
import org.arcsay.review.ReviewModel;
import org.arcsay.session.VisitSession;
import org.arcsay.store.DataFolder;
import org.arcsay.store.StoreException;
import org.arcsay.store.VisitStore;

/**
 * The recorded visit that comes with the program, with records of its own that are thrown away. Used by one thread.
 *
 * @param folder holds everything of it, and is removed at the end
 */
public record DemoVisit(Path folder, DataFolder home, VisitStore store) implements AutoCloseable {
    /** The code of the invented patient. */
    public static final PatientCode PATIENT = new PatientCode("DEMO-1");

    private static final String PREFIX = "arcsay-demo";
    private static final Duration EARLIER = Duration.ofDays(21);
    private static final List<String> BEFORE = List.of(
            "right thumb active",
            "mp flexion 41",
            "mp hyperextension 8",
            "ip flexion 28",
            "ip extension deficit 15",
            "radial abduction 36",
            "palmar abduction 32",
            "opposition index touches",
            "opposition middle 5 mm",
            "opposition ring 15 mm",
            "opposition little 27 mm",
            "left thumb",
            "mp flexion 60",
            "ip flexion 82",
            "ip hyperextension 20",
            "radial abduction 54",
            "palmar abduction 55",
            "end session");

    static final String REMARK =
            "Demo visit: a recording with invented readings. It is thrown away when the program ends.";

    /** Begins with empty records in a folder for temporary files, and removes what a killed demo left there. */
    static DemoVisit open() throws StoreException {
        return open(Path.of(System.getProperty("java.io.tmpdir")));
    }

    /** Begins with empty records in a folder of their own below another. */
    static DemoVisit open(Path temporary) throws StoreException {
        removeLeft(temporary);
        try {
            Path folder = Files.createTempDirectory(temporary, PREFIX);
            DataFolder home = DataFolder.resolve(Optional.of(folder)).create();
            return new DemoVisit(folder, home, VisitStore.open(home.database()));
        } catch (IOException e) {
            throw new UncheckedIOException("no folder for temporary files", e);
        }
    }

    private static void removeLeft(Path temporary) {
        try (Stream<Path> folders = Files.list(temporary)) {
            folders.filter(folder -> folder.getFileName().toString().startsWith(PREFIX))
                    .forEach(DemoVisit::removeIfLeft);
        } catch (IOException e) {
            // It holds nothing but invented data; the next demo tries again.
        }
    }

    /** Records that no running demo holds, and that can be opened by this user, were left behind. */
    private static void removeIfLeft(Path folder) {
        try {
            Path records = DataFolder.resolve(Optional.of(folder)).database();
            if (Files.exists(records)) {
                new DemoVisit(folder, DataFolder.resolve(Optional.of(folder)), VisitStore.open(records)).close();
            }
        } catch (StoreException e) {
            // A running demo holds it, or it is somebody else's.
        }
    }

    /** Writes the recording into a folder, where it can be opened as a file. */
    public static Path recording(Path folder) throws IOException {
        Path target = folder.resolve("demo-visit.wav");
        try (InputStream in = Objects.requireNonNull(
                DemoVisit.class.getResourceAsStream("/org/arcsay/demo/visit.wav"), "the demo recording is missing")) {
            Files.copy(in, target, StandardCopyOption.REPLACE_EXISTING);
        }
        return target;
    }

    /** What was measured three weeks before; the recorded visit differs from it in one place by so much that it is asked about. */
    void addEarlierVisit(SpokenGrammar grammar) throws StoreException {
        Visits visits = visits(grammar.version());
        Clock then = Clock.offset(Clock.systemDefaultZone(), EARLIER.negated());
        VisitSession session =
                visits.begin(PATIENT, Optional.empty(), SeriesPlans.standard().usual(), then);
        try {
            CaptureLoop loop = new CaptureLoop(
                    new Parser(grammar), session, visits.versions(), (utterance, command, outcome) -> {});
            BEFORE.forEach(loop::type);
        } finally {
            session.close();
        }
        ReviewModel review = visits.review(store.visit(session.visit().id()).orElseThrow(), "demo", home.drafts());
        review.rows().forEach(row -> {
            review.markSeen(row.number());
            review.confirm(row.number());
        });
    }

    Visits visits(String grammarVersion) {
        return new Visits(store, ClinicSettings.defaults(), Customs.usual(), grammarVersion);
    }

    MicrophoneChoice player() throws IOException, AudioException {
        return MicrophoneChoice.Recording.of(recording(home.cache()));
    }

    static MeasuringStart start() {
        return new MeasuringStart(
                PATIENT, Optional.empty(), SeriesPlans.standard().usual(), Optional.empty());
    }

    @Override
    public void close() throws StoreException {
        store.close();
        try {
            Files.walkFileTree(folder, new Removal());
        } catch (IOException e) {
            // It holds nothing but invented data, and the system empties its folder for temporary files.
        }
    }

    private static final class Removal extends SimpleFileVisitor<Path> {
        @Override
        public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
            Files.delete(file);
            return FileVisitResult.CONTINUE;
        }

        @Override
        public FileVisitResult postVisitDirectory(Path emptied, IOException failure) throws IOException {
            Files.delete(emptied);
            return FileVisitResult.CONTINUE;
        }
    }
}
