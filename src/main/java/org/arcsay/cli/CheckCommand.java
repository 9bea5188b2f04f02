package org.arcsay.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.arcsay.app.Ears;
import org.arcsay.app.Settings;
import org.arcsay.audio.Microphone;
import org.arcsay.grammar.GrammarException;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.recogniser.ModelException;
import org.arcsay.store.DataFolder;
import org.arcsay.store.StoreException;
import org.arcsay.store.VisitStore;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Checks everything that a capture needs, one line each. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = "Checks Java, microphones, speech model, vocabulary, grammar, records and disk, one line each.")
final class CheckCommand implements Callable<Integer> {
    private static final long ENOUGH_DISK = 200L << 20;

    @Mixin
    private Place place;

    @Mixin
    private ModelOption model;

    enum Verdict {
        OK,
        /** Works, with something worth knowing. */
        NOTE,
        FAILED
    }

    record Line(String what, Verdict verdict, String detail) {}

    @Override
    public Integer call() throws Exception {
        DataFolder folder = place.folder();
        List<Line> lines = new ArrayList<>();
        lines.add(java());
        lines.add(microphones());
        lines.addAll(grammarAndModel(folder));
        lines.add(settings());
        lines.add(records(folder));
        lines.add(sound(folder));
        lines.add(disk(folder));
        print(lines);
        return lines.stream().anyMatch(line -> line.verdict() == Verdict.FAILED) ? ExitCode.CHECK_FAILED : ExitCode.OK;
    }

    private void print(List<Line> lines) {
        if (place.json()) {
            place.out().println(Json.text(lines));
            return;
        }
        for (Line line : lines) {
            place.out()
                    .println(String.format(
                            Locale.ROOT,
                            "%-6s %-11s %s",
                            line.verdict().name().toLowerCase(Locale.ROOT),
                            line.what(),
                            line.detail()));
        }
    }

    private static Line java() {
        return new Line(
                "java", Verdict.OK, System.getProperty("java.version") + " on " + System.getProperty("os.name"));
    }

    private static Line microphones() {
        List<String> devices = Microphone.devices();
        return devices.isEmpty()
                ? new Line(
                        "microphone",
                        Verdict.NOTE,
                        "none found; plug one in and allow this program to use it. Recordings can still be used.")
                : new Line("microphone", Verdict.OK, String.join(", ", devices));
    }

    private List<Line> grammarAndModel(DataFolder folder) {
        try {
            SpokenGrammar grammar = place.grammar();
            return List.of(ambiguity(grammar), vocabulary(folder, grammar));
        } catch (Settings.SettingsException e) {
            return List.of(new Line("grammar", Verdict.FAILED, "not looked at, since the settings cannot be used"));
        } catch (GrammarException | StoreException e) {
            return List.of(new Line("grammar", Verdict.FAILED, String.valueOf(e.getMessage())));
        }
    }

    private static Line ambiguity(SpokenGrammar grammar) {
        List<String> twofold = grammar.ambiguities(3);
        return twofold.isEmpty()
                ? new Line(
                        "grammar",
                        Verdict.OK,
                        "version " + grammar.version() + ", every sentence has one meaning, "
                                + grammar.words().size() + " words")
                : new Line("grammar", Verdict.FAILED, "sentences with two meanings: " + String.join("; ", twofold));
    }

    private Line vocabulary(DataFolder folder, SpokenGrammar grammar) {
        try (Ears ears = Ears.open(folder.models(), model.folder().or(this::modelOfSettings), grammar)) {
            return ears.missingWords().isEmpty()
                    ? new Line("model", Verdict.OK, ears.version() + ", knows every word of the grammar")
                    : new Line(
                            "model",
                            Verdict.NOTE,
                            ears.version() + " lacks: " + String.join(", ", ears.missingWords()));
        } catch (ModelException e) {
            return new Line("model", Verdict.FAILED, String.valueOf(e.getMessage()));
        }
    }

    /** None where the settings cannot be read, which has a line of its own. */
    private Optional<Path> modelOfSettings() {
        try {
            return place.settings().model();
        } catch (StoreException | Settings.SettingsException e) {
            return Optional.empty();
        }
    }

    private Line settings() throws StoreException {
        Path file = place.folder().settings();
        try {
            place.settings();
            return new Line(
                    "settings",
                    Verdict.OK,
                    Files.exists(file) ? file.toString() : "defaults; " + file + " is not there");
        } catch (Settings.SettingsException e) {
            return new Line("settings", Verdict.FAILED, String.valueOf(e.getMessage()));
        }
    }

    private static Line records(DataFolder folder) {
        if (!Files.exists(folder.database())) {
            return new Line("records", Verdict.OK, folder.database() + ", made at the first visit");
        }
        try (VisitStore store = VisitStore.openReadOnly(folder.database())) {
            store.integrityCheck();
            return new Line(
                    "records",
                    Verdict.OK,
                    folder.database() + ", sound, " + store.patients().size() + " patients");
        } catch (StoreException e) {
            return new Line("records", Verdict.FAILED, String.valueOf(e.getMessage()));
        }
    }

    private static Line sound(DataFolder folder) throws StoreException {
        int kept = folder.sound().all().size();
        return kept == 0
                ? new Line("sound", Verdict.OK, "none kept")
                : new Line(
                        "sound",
                        Verdict.NOTE,
                        kept + " recordings kept in " + folder.sound().folder()
                                + "; 'arcsay purge-sound' removes them");
    }

    private static Line disk(DataFolder folder) {
        long free = folder.data().toFile().getUsableSpace();
        String detail = (free >> 20) + " MB free in " + folder.data();
        return free >= ENOUGH_DISK
                ? new Line("disk", Verdict.OK, detail)
                : new Line("disk", Verdict.FAILED, detail + "; make room before the next visit");
    }
}
