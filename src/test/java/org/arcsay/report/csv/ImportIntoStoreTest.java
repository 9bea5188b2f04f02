package org.arcsay.report.csv;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Visit;
import org.arcsay.report.content.DemoCase;
import org.arcsay.report.content.VisitRecord;
import org.arcsay.session.Journal;
import org.arcsay.store.VisitStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ImportIntoStoreTest {
    @TempDir
    private Path folder;

    @Test
    void exportedVisitsImportedIntoAnEmptyDatabaseAreTheSameAndExportTheSame() throws Exception {
        String exported = CsvRoundTripTest.csv(DemoCase.report());
        List<VisitRecord> stored = new ArrayList<>();
        try (VisitStore store = VisitStore.open(folder.resolve("empty.db"))) {
            for (ImportedVisit visit : ready(exported)) {
                Visit begun = store.begin(visit.patient(), visit.startedAt(), "");
                append(store.journal(begun.id()), visit.journal());
            }
        }
        try (VisitStore store = VisitStore.openReadOnly(folder.resolve("empty.db"))) {
            for (Visit visit : store.visits(new PatientCode("demo-07"))) {
                stored.add(new VisitRecord(visit, store.history(visit.id())));
            }
        }

        assertEquals(
                DemoCase.visits().stream().map(VisitRecord::visit).toList(),
                stored.stream().map(VisitRecord::visit).toList());
        assertEquals(exported, CsvRoundTripTest.csv(CsvRoundTripTest.reportOf(stored)));
    }

    private static List<ImportedVisit> ready(String csv) throws Exception {
        return assertInstanceOf(CsvImport.Ready.class, CsvRoundTripTest.read(csv))
                .visits();
    }

    private static void append(Journal journal, List<JournalEvent> events) throws Exception {
        for (JournalEvent event : events) {
            journal.append(event);
        }
    }
}
