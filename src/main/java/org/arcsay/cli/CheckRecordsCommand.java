package org.arcsay.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Visit;
import org.arcsay.store.StoreException;
import org.arcsay.store.VisitStore;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Looks through the records and every backup in full. */
@Command(
        name = "check-records",
        mixinStandardHelpOptions = true,
        description =
                "Checks the records and every backup in full: pages, references, the checksum of every event, and that"
                        + " each visit can be made again from its events. Changes nothing.")
final class CheckRecordsCommand implements Callable<Integer> {
    @Mixin
    private Place place;

    record CheckView(
            String records,
            boolean sound,
            int patients,
            int visits,
            int events,
            @Nullable String problem,
            List<BackupCommand.BackupView> backups) {
        List<String> lines() {
            List<String> lines = new ArrayList<>();
            lines.add(
                    sound
                            ? "good     records " + records + ": " + patients + " patients, " + visits + " visits, "
                                    + events + " events, all as they were stored"
                            : "DAMAGED  records " + records + ": " + problem);
            backups.forEach(backup -> lines.add(backup.text()));
            if (backups.isEmpty()) {
                lines.add("no backups yet; one is made at the end of each session, or now with 'arcsay backup'");
            }
            return lines;
        }
    }

    @Override
    public Integer call() throws Exception {
        CheckView view;
        try (VisitStore store = place.storeToRead()) {
            view = look(store);
        }
        place.print(view, String.join(System.lineSeparator(), view.lines()));
        return view.sound() ? ExitCode.OK : ExitCode.RECORDS;
    }

    private CheckView look(VisitStore store) throws StoreException {
        List<BackupCommand.BackupView> backups = BackupCommand.views(place.folder());
        String file = store.file().toString();
        try {
            store.integrityCheck();
            List<PatientCode> patients = store.patients();
            int visits = 0;
            int events = 0;
            for (PatientCode patient : patients) {
                for (Visit visit : store.visits(patient)) {
                    visits++;
                    events += store.history(visit.id()).size();
                }
            }
            return new CheckView(file, true, patients.size(), visits, events, null, backups);
        } catch (StoreException e) {
            return new CheckView(file, false, 0, 0, 0, String.valueOf(e.getMessage()), backups);
        }
    }
}
