package org.arcsay.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.arcsay.app.KeptAppearance;
import org.arcsay.app.Settings;
import org.arcsay.grammar.GrammarException;
import org.arcsay.grammar.Lexicon;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Visit;
import org.arcsay.store.Backups;
import org.arcsay.store.DataFolder;
import org.arcsay.store.StoreException;
import org.arcsay.store.VisitStore;
import org.arcsay.ui.Look;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import picocli.CommandLine.Spec.Target;

/** Options that every command has, and what they lead to. Used by the thread that runs the command. */
final class Place {
    @Spec(Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = "--home",
            paramLabel = "FOLDER",
            description = "Folder for records, settings and caches instead of the usual one (variable: ARCSAY_HOME).")
    private @Nullable Path home;

    @Option(
            names = "--grammar",
            paramLabel = "NAME|FILE",
            description =
                    "What can be said: thumb, hand (thumb, fingers and wrist), or a grammar file (setting: grammar).")
    private @Nullable String grammar;

    @Option(
            names = "--lexicon",
            paramLabel = "FILE",
            description = "Pronunciations of own words that the speech model lacks, as in grammar/lexicon.txt.")
    private @Nullable Path lexicon;

    @Option(names = "--json", description = "Machine-readable output, in a stable form.")
    private boolean json;

    PrintWriter out() {
        return spec.commandLine().getOut();
    }

    PrintWriter err() {
        return spec.commandLine().getErr();
    }

    Keyboard keyboard() {
        return ((ArcsayCommand) spec.root().userObject()).keyboard();
    }

    boolean json() {
        return json;
    }

    DataFolder folder() throws StoreException {
        return DataFolder.resolve(Optional.ofNullable(home)).create();
    }

    Settings settings() throws StoreException, Settings.SettingsException {
        return Settings.read(folder().settings());
    }

    SpokenGrammar grammar() throws GrammarException, StoreException, Settings.SettingsException {
        Settings settings = settings();
        Optional<String> rules = Optional.ofNullable(grammar).or(settings::grammar);
        Optional<Path> words = Optional.ofNullable(lexicon).or(settings::lexicon);
        SpokenGrammar spoken = rules.isPresent() ? SpokenGrammar.named(rules.get()) : SpokenGrammar.standard();
        return words.isPresent() ? spoken.with(Lexicon.read(words.get())) : spoken;
    }

    /** How windows look, and where that is kept. */
    Look look(SpokenGrammar spoken) throws StoreException, Settings.SettingsException {
        return Look.of(spoken.helpCard(), settings().appearance(), new KeptAppearance(folder().settings()));
    }

    VisitStore store() throws StoreException {
        return VisitStore.open(folder().database());
    }

    /** To work with records that are there; none are made. */
    VisitStore storeToKeep() throws StoreException, CliException {
        requireRecords();
        return store();
    }

    /** To look at records while another copy of the program may be capturing. */
    VisitStore storeToRead() throws StoreException, CliException {
        requireRecords();
        return VisitStore.openReadOnly(folder().database());
    }

    private void requireRecords() throws StoreException, CliException {
        Path file = folder().database();
        if (!Files.exists(file)) {
            throw new CliException(
                    ExitCode.UNKNOWN,
                    "There are no visits yet in " + file + ". Begin with 'arcsay demo' or 'arcsay capture'.");
        }
    }

    static Visit visit(VisitStore store, long id) throws StoreException, CliException {
        Optional<Visit> visit = store.visit(id);
        if (visit.isEmpty()) {
            throw new CliException(
                    ExitCode.UNKNOWN, "There is no visit " + id + ". 'arcsay list' shows those there are.");
        }
        return visit.get();
    }

    /** Shows a visit in the form that was asked for, and whether its sound is kept. */
    void print(Visit visit, boolean history) throws StoreException {
        Optional<Path> sound = folder().sound().of(visit.id());
        if (json) {
            out().println(Json.text(Json.VisitView.of(visit, sound)));
        } else {
            VisitText.print(visit, history, out());
            sound.ifPresent(file -> out().println("SOUND KEPT in " + file + " until 'arcsay purge-sound'"));
        }
    }

    /** Shows a result as JSON, or as the text. */
    void print(Object result, String text) {
        out().println(json ? Json.text(result) : text);
    }

    /** Backs up what a session stored. That it failed is told, and changes nothing else. */
    void backUp(VisitStore store) {
        try {
            Backups.beside(store.file()).keepUp(store, Instant.now());
        } catch (StoreException e) {
            err().println("No backup was made: " + e.getMessage());
        }
    }

    /** Tells where a captured visit becomes final. */
    void pointToReview(Visit visit) {
        err().println("Nothing is final yet. Look through it with: arcsay review " + visit.id());
    }

    static PatientCode patientCode(String text) throws CliException {
        try {
            return new PatientCode(text);
        } catch (IllegalArgumentException e) {
            throw new CliException(ExitCode.USAGE, e.getMessage() + ".");
        }
    }

    static void requireKnown(VisitStore store, PatientCode patient) throws StoreException, CliException {
        if (!store.knows(patient)) {
            throw unknownPatient(store, patient, "");
        }
    }

    static CliException unknownPatient(VisitStore store, PatientCode patient, String orElse) throws StoreException {
        List<PatientCode> known = store.patients();
        String others = known.isEmpty()
                ? "There are no patients yet."
                : "Known are "
                        + String.join(
                                ", ",
                                known.stream().limit(10).map(PatientCode::text).toList())
                        + (known.size() > 10 ? " and " + (known.size() - 10) + " more." : ".");
        return new CliException(
                ExitCode.UNKNOWN,
                "The patient code " + patient + " is not known. " + others + " Check the spelling." + orElse);
    }
}
