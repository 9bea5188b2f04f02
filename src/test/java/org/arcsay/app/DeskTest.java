package org.arcsay.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Predicate;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.audio.AudioException;
import org.arcsay.audio.Microphone;
import org.arcsay.audio.SimulatedMicrophone;
import org.arcsay.feedback.VoiceSettings;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Severity;
import org.arcsay.review.Listening;
import org.arcsay.review.MeasuringModel;
import org.arcsay.review.MeasuringStart;
import org.arcsay.review.MeasuringState;
import org.arcsay.review.ReviewModel;
import org.arcsay.review.SettingsModel;
import org.arcsay.review.SoundTry;
import org.arcsay.store.DataFolder;
import org.arcsay.store.StoreException;
import org.arcsay.store.VisitStore;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the screens ask for, done with real recordings, the real speech model and a real records file. */
class DeskTest {
    private static final long PATIENCE_SECONDS = 120;

    @TempDir
    private Path home;

    private final SpokenGrammar grammar = SpokenGrammar.standard();
    private VisitStore store;
    private Desk desk;

    /** A microphone of the test's own. */
    private interface Opening {
        Microphone open() throws AudioException;
    }

    private record Scripted(Opening opening) implements MicrophoneChoice {
        @Override
        public List<String> names() {
            return List.of("scripted");
        }

        @Override
        public Microphone open(Optional<String> name) throws AudioException {
            return opening.open();
        }
    }

    @BeforeEach
    void openStore() throws StoreException {
        store = VisitStore.open(folder().database());
    }

    @AfterEach
    void close() throws StoreException {
        desk.close();
        store.close();
    }

    private DataFolder folder() throws StoreException {
        return DataFolder.resolve(Optional.of(home)).create();
    }

    private MeasuringModel measure(Optional<Path> model, Opening opening) throws Exception {
        desk = new Desk(
                folder(),
                grammar,
                model,
                Settings.defaults(),
                settings -> new Desk.Setup(
                        new Visits(store, settings.clinic(), settings.habits().customs(), grammar.version()),
                        new Scripted(opening),
                        VoiceSettings.silent(),
                        settings.habits()));
        return desk.measure(new MeasuringStart(
                new PatientCode("T-1"), Optional.empty(), SeriesPlans.standard().usual(), Optional.empty()));
    }

    /** Waits for a state, with everything seen on the way. */
    private static Set<Listening> until(MeasuringModel model, Predicate<MeasuringState> wanted)
            throws InterruptedException {
        LinkedBlockingQueue<MeasuringState> states = new LinkedBlockingQueue<>();
        Set<Listening> seen = EnumSet.noneOf(Listening.class);
        model.onChange(states::add);
        states.add(model.state());
        while (true) {
            MeasuringState state = states.poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
            assertTrue(state != null, () -> "waited in vain; last was " + model.state());
            seen.add(state.listening());
            if (wanted.test(state)) {
                return seen;
            }
        }
    }

    private static Predicate<MeasuringState> is(Listening listening) {
        return state -> state.listening() == listening;
    }

    @Test
    void aWholeVisitIsHeardShownAndLeadsToItsReview() throws Exception {
        SimulatedMicrophone script =
                new SimulatedMicrophone().speed(Double.POSITIVE_INFINITY).pause(Duration.ofSeconds(2));
        List<Rehearsal.Line> lines = Rehearsal.script();
        for (Rehearsal.Line line : lines.subList(0, lines.size() - 1)) {
            script.play(line.wav()).pause(Duration.ofSeconds(6));
        }
        MeasuringModel model = measure(Optional.empty(), script::open);
        Set<Listening> seen = until(model, is(Listening.TYPING));
        assertTrue(seen.containsAll(Set.of(Listening.LISTENING, Listening.HEARING)), seen::toString);
        assertEquals(
                "left IP flexion, active: 70 degrees",
                model.state().last().orElseThrow().reading().words());
        model.say("ip extension deficit 5");
        model.say("end session");
        until(model, is(Listening.ENDED));
        assertEquals(14, model.review().visit().counting().size());
        assertEquals(
                "left IP extension, active: lacks 5 degrees",
                model.review().visit().counting().get(13).reading().words());
    }

    @Test
    void aMutedAndAVanishedMicrophoneAreToldAndListeningGoesOnByItself() throws Exception {
        Rehearsal.Line flexion = Rehearsal.script().get(4);
        MeasuringModel model = measure(
                Optional.empty(),
                new SimulatedMicrophone()
                        .mute(Duration.ofSeconds(3))
                        .pause(Duration.ofSeconds(1))
                        .vanish(Duration.ofSeconds(1))
                        .pause(Duration.ofSeconds(1))
                        .play(flexion.wav())
                        .pause(Duration.ofSeconds(2))::open);
        model.say("right hand");
        until(model, is(Listening.NO_SIGNAL));
        assertTrue(model.state().notice().contains("no signal"), model.state()::notice);
        until(model, is(Listening.DEVICE_LOST));
        assertTrue(model.state().notice().contains("gone"), model.state()::notice);
        until(model, state -> state.last().isPresent());
        assertEquals(
                "right IP flexion, active: 68 degrees",
                model.state().last().orElseThrow().reading().words());
        assertFalse(model.state().notice().contains("gone"), model.state()::notice);
    }

    @Test
    void aMicrophoneThatComesLaterIsTakenAndTypingGoesOnMeanwhile() throws Exception {
        AtomicInteger tries = new AtomicInteger();
        MeasuringModel model = measure(Optional.empty(), () -> {
            if (tries.getAndIncrement() == 0) {
                throw new AudioException("No microphone was found.");
            }
            return new SimulatedMicrophone().pause(Duration.ofMinutes(1)).open();
        });
        model.say("right ip flexion 70");
        until(model, state -> state.last().isPresent());
        Set<Listening> seen = until(model, is(Listening.LISTENING));
        assertTrue(seen.contains(Listening.TYPING), seen::toString);
        assertEquals(2, tries.get());
    }

    @Test
    void withoutASpeechModelTheVisitGoesOnByTyping() throws Exception {
        MeasuringModel model = measure(Optional.of(home.resolve("nothing")), () -> {
            throw new AssertionError("no microphone is needed");
        });
        model.say("right ip flexion 70");
        until(model, state -> state.last().isPresent());
        assertEquals(Listening.TYPING, model.state().listening());
        assertTrue(model.state().notice().contains("nothing"), model.state()::notice);
        model.closed();
        until(model, is(Listening.ENDED));
        assertEquals(1, model.review().visit().counting().size());
        assertTrue(model.review().visit().endedAt().isPresent());
    }

    @Test
    void pausingShowsAndLetsNothingInButTheWordsToGoOn() throws Exception {
        MeasuringModel model = measure(
                Optional.empty(),
                () -> new SimulatedMicrophone().pause(Duration.ofMinutes(1)).open());
        model.say("stand by");
        until(model, is(Listening.PAUSED));
        model.say("right ip flexion 70");
        model.say("go ahead");
        until(model, is(Listening.LISTENING));
        assertEquals(Optional.empty(), model.state().last());
    }

    @Test
    void tryingAMicrophoneShowsItsLevel() throws Exception {
        Path wav = Rehearsal.script().get(4).wav();
        measure(Optional.empty(), () -> new SimulatedMicrophone()
                .speed(4)
                .play(wav)
                .pause(Duration.ofSeconds(4))
                .open());
        LinkedBlockingQueue<String> levels = new LinkedBlockingQueue<>();
        try (SoundTry attempt =
                desk.tryMicrophone(Optional.empty(), (level, notice) -> levels.add(level.words() + notice))) {
            String level = "";
            while (!level.equals("good")) {
                level = levels.poll(10, TimeUnit.SECONDS);
                assertTrue(level != null, "nothing loud enough was heard");
            }
        }
    }

    @Test
    void theDemoVisitIsHeardLookedThroughAndReportedAndLeavesNothing() throws Exception {
        measure(Optional.of(home.resolve("nothing")), () -> {
            throw new AudioException("No microphone was found.");
        });
        desk.close();
        desk = new Desk(
                folder(),
                grammar,
                Optional.empty(),
                Settings.defaults(),
                settings -> new Desk.Setup(
                        new Visits(store, settings.clinic(), settings.habits().customs(), grammar.version()),
                        new Scripted(() -> {
                            throw new AudioException("No microphone was found.");
                        }),
                        VoiceSettings.silent(),
                        settings.habits()));
        MeasuringModel demo = desk.demo();
        assertTrue(demo.remark().startsWith("Demo visit"), demo::remark);
        until(demo, is(Listening.ENDED));
        ReviewModel review = demo.review();
        assertEquals(15, review.visit().counting().size());
        List<String> asked = review.rows().stream()
                .takeWhile(row -> row.entry().findings().stream()
                        .anyMatch(finding -> finding.severity().compareTo(Severity.ASK) >= 0))
                .map(row -> row.entry().reading().slot().words())
                .toList();
        assertTrue(asked.contains("right IP flexion, active"), () -> "the doubts stand first: " + asked);
        assertTrue(asked.size() < review.rows().size(), () -> "not all is doubtful: " + asked);
        assertEquals(
                2,
                review.report().orElseThrow().show(review.visit().id()).pages().size(),
                "one page a thumb");
        assertTrue(desk.recent().stream().noneMatch(visit -> visit.patient().equals(DemoVisit.PATIENT)));
    }

    @Test
    void aChangedSettingHoldsFromTheNextVisitOn() throws Exception {
        measure(Optional.of(home.resolve("nothing")), () -> {
            throw new AudioException("No microphone was found.");
        });
        SettingsModel settings = new SettingsModel(desk.settings());
        settings.change("unit", "cm");
        settings.change("plan", "opposition");
        assertTrue(settings.save(), settings::message);
        assertEquals("opposition", desk.usualPlan().id());
        MeasuringModel next = desk.measure(
                new MeasuringStart(new PatientCode("T-2"), Optional.empty(), desk.usualPlan(), Optional.empty()));
        next.say("right opposition little four point five");
        until(next, state -> state.last().isPresent());
        assertEquals(
                "right opposition to little tip, active: 4.5 cm",
                next.state().last().orElseThrow().reading().words());
    }
}
