package org.arcsay.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.arcsay.analysis.SeriesPlan;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.model.PatientCode;
import org.arcsay.model.PatientProtocol;
import org.arcsay.model.Visit;

/** A start screen with the given visits and a disk that can fail. Used by one thread. */
public final class HomeScript implements HomeActions {
    private final List<Visit> visits;
    private final List<String> begun = new ArrayList<>();
    private final List<String> tried = new ArrayList<>();
    private final List<MeasuringStart> starts = new ArrayList<>();
    private Optional<String> usual = Optional.empty();
    private final SettingsScript settings = new SettingsScript();
    private boolean broken;

    public HomeScript(Visit... visits) {
        this.visits = List.of(visits);
    }

    public void breakDisk() {
        broken = true;
    }

    public List<String> begun() {
        return begun;
    }

    @Override
    public List<Visit> recent() throws HomeException {
        requireDisk();
        return visits;
    }

    @Override
    public boolean knows(PatientCode patient) {
        return visits.stream().anyMatch(visit -> visit.patient().equals(patient));
    }

    @Override
    public ReviewModel review(long visit) throws HomeException {
        requireDisk();
        return ReviewModel.open(
                DemoVisit.visit(),
                DemoVisit.events(),
                new ListJournal(),
                DemoVisit::judge,
                DemoVisit.context(),
                new MemoryDrafts());
    }

    @Override
    public List<String> microphones() {
        return List.of("Desk microphone", "Headset");
    }

    @Override
    public Optional<String> usualMicrophone() {
        return usual;
    }

    @Override
    public void rememberMicrophone(String name) {
        usual = Optional.of(name);
    }

    /** What was chosen before. */
    public HomeScript withUsualMicrophone(String name) {
        usual = Optional.of(name);
        return this;
    }

    @Override
    public SoundTry tryMicrophone(Optional<String> name, SoundTry.Listener listener) {
        tried.add(name.orElse("usual"));
        listener.heard(new MeasuringState.Loudness(0.6, false), "");
        return () -> tried.add("closed");
    }

    public List<String> tried() {
        return tried;
    }

    /** The starts that were asked for. */
    public List<MeasuringStart> starts() {
        return starts;
    }

    @Override
    public MeasuringModel measure(MeasuringStart start) throws HomeException {
        requireDisk();
        starts.add(start);
        begun.add(start.patient().text());
        return new MeasuringScript().model();
    }

    @Override
    public MeasuringModel demo() {
        begun.add("demo");
        return new MeasuringScript().model();
    }

    @Override
    public SeriesPlan usualPlan() {
        return SeriesPlans.standard().usual();
    }

    @Override
    public List<SeriesPlan> plans() {
        return SeriesPlans.standard().all();
    }

    /** Protocols as they were set last, for one patient. */
    private PatientProtocol protocol = PatientProtocol.none();

    @Override
    public ProtocolModel protocol(PatientCode patient) throws HomeException {
        requireDisk();
        return ProtocolModel.open(patient, new ProtocolModel.Actions() {
            @Override
            public PatientProtocol now(PatientCode whose) {
                return protocol;
            }

            @Override
            public PatientProtocol set(PatientCode whose, String statements, String by) throws HomeException {
                requireDisk();
                try {
                    protocol = PatientProtocol.parse(statements);
                    return protocol;
                } catch (IllegalArgumentException e) {
                    throw new HomeException(String.valueOf(e.getMessage()), e);
                }
            }
        });
    }

    @Override
    public SettingsActions settings() {
        return settings;
    }

    /** The settings behind their screen. */
    public SettingsScript settingsScript() {
        return settings;
    }

    private void requireDisk() throws HomeException {
        if (broken) {
            throw new HomeException(ListJournal.FAILURE, null);
        }
    }
}
