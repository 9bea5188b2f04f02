package org.arcsay.review;

import java.util.ArrayList;
import java.util.List;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Visit;

/** A start screen with the given visits and a disk that can fail. Used by one thread. */
public final class HomeScript implements HomeActions {
    private final List<Visit> visits;
    private final List<String> begun = new ArrayList<>();
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
    public MeasuringModel measure(PatientCode patient) throws HomeException {
        requireDisk();
        begun.add(patient.text());
        return new MeasuringScript().model();
    }

    private void requireDisk() throws HomeException {
        if (broken) {
            throw new HomeException(ListJournal.FAILURE, null);
        }
    }
}
