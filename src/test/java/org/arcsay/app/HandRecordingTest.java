package org.arcsay.app;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.arcsay.analysis.Customs;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.audio.WavSource;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Visit;
import org.arcsay.parser.Parser;
import org.arcsay.recogniser.Recogniser;
import org.arcsay.session.VisitSession;
import org.arcsay.store.VisitStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A finger and a wrist from sound to the records file, with the built-in speech model and the grammar of the hand. */
class HandRecordingTest {
    @TempDir
    private Path folder;

    @Test
    void aFingerAndAWristAreHeardAndStored() throws Exception {
        SpokenGrammar grammar = SpokenGrammar.hand();
        try (Ears ears = Ears.open(folder.resolve("models"), Optional.empty(), grammar);
                VisitStore store = VisitStore.open(folder.resolve("visits.db"));
                WavSource source = WavSource.open(Path.of("src/test/resources/speech/hand-flite-rms.wav"))) {
            Visits visits = new Visits(store, ClinicSettings.defaults(), Customs.usual(), grammar.version());
            VisitSession session = visits.begin(
                    new PatientCode("T-1"),
                    Optional.empty(),
                    SeriesPlans.standard().named("index").orElseThrow());
            try (Recogniser recogniser = ears.recogniser(source.sampleRate())) {
                new CaptureLoop(
                                new Parser(grammar),
                                session,
                                visits.versions(ears),
                                (utterance, command, outcome) -> {})
                        .run(source, recogniser);
            }
            session.close();
            Visit stored = store.visit(session.visit().id()).orElseThrow();
            assertEquals(
                    List.of(
                            "right index PIP flexion, active: 100 degrees",
                            "right index PIP extension, active: lacks 10 degrees",
                            "right index DIP flexion, active: 60 degrees",
                            "right wrist extension, active: 65 degrees",
                            "right wrist ulnar deviation, active: 30 degrees"),
                    stored.counting().stream()
                            .map(entry -> entry.reading().words())
                            .toList());
        }
    }
}
