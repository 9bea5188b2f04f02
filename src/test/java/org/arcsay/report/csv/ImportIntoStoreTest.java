package org.arcsay.report.csv;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.PatientCode;
import org.arcsay.report.StoredVisits;
import org.arcsay.report.content.DemoCase;
import org.arcsay.report.content.VisitRecord;
import org.arcsay.store.StoreException;
import org.arcsay.store.VisitStore;
import org.arcsay.store.WholeVisit;
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
            store.addAll(ready(exported));
        }
        try (VisitStore store = VisitStore.openReadOnly(folder.resolve("empty.db"))) {
            stored.addAll(StoredVisits.of(store, new PatientCode("demo-07")));
        }

        assertEquals(
                DemoCase.visits().stream().map(VisitRecord::visit).toList(),
                stored.stream().map(VisitRecord::visit).toList());
        assertEquals(exported, CsvRoundTripTest.csv(CsvRoundTripTest.reportOf(stored)));
    }

    @Test
    void theSeriesOfAVisitIsStoredAndExportedAgain() throws Exception {
        List<VisitRecord> visits = DemoCase.visits().stream()
                .map(visit -> visit.following("thumb-short"))
                .toList();
        String exported = CsvRoundTripTest.csv(CsvRoundTripTest.reportOf(visits));
        try (VisitStore store = VisitStore.open(folder.resolve("empty.db"))) {
            long id = store.addAll(ready(exported)).get(0).id();

            assertEquals(Optional.of("thumb-short"), store.plan(id));
            assertEquals(
                    exported,
                    CsvRoundTripTest.csv(
                            CsvRoundTripTest.reportOf(StoredVisits.of(store, new PatientCode("demo-07")))));
        }
    }

    @Test
    void aVisitThatIsThereAlreadyKeepsAllOfTheFileOut() throws Exception {
        List<WholeVisit> visits = ready(CsvRoundTripTest.csv(DemoCase.report()));
        try (VisitStore store = VisitStore.open(folder.resolve("some.db"))) {
            store.begin(visits.get(2).patient(), visits.get(2).startedAt().withOffsetSameInstant(ZoneOffset.UTC), "");

            StoreException refused = assertThrows(StoreException.class, () -> store.addAll(visits));

            assertTrue(refused.getMessage().contains("Nothing was added"), refused.getMessage());
            assertEquals(1, store.recent(10).size());
        }
    }

    @Test
    void anOlderVisitThatComesLaterStandsBeforeTheNewerOne() throws Exception {
        List<WholeVisit> visits = ready(CsvRoundTripTest.csv(DemoCase.report()));
        try (VisitStore store = VisitStore.open(folder.resolve("some.db"))) {
            store.addAll(visits.subList(2, 4));
            store.addAll(visits.subList(0, 2));

            List<Long> order = StoredVisits.of(store, new PatientCode("demo-07")).stream()
                    .map(record -> record.visit().id())
                    .toList();
            assertEquals(List.of(3L, 4L, 1L, 2L), order);
            assertEquals(
                    3, StoredVisits.upTo(store, store.visit(1).orElseThrow()).size());
        }
    }

    @Test
    void eventsThatContradictEachOtherLeaveNothing() throws Exception {
        List<WholeVisit> visits = ready(CsvRoundTripTest.csv(DemoCase.report()));
        WholeVisit sound = visits.get(0);
        WholeVisit wrong = new WholeVisit(
                sound.patient(),
                sound.startedAt().plusDays(1),
                "",
                sound.journal().subList(1, 5));
        try (VisitStore store = VisitStore.open(folder.resolve("some.db"))) {
            assertThrows(IllegalStateException.class, () -> store.addAll(List.of(sound, wrong)));

            assertEquals(List.of(), store.recent(10));
            assertEquals(List.of(), store.patients());
        }
    }

    private static List<WholeVisit> ready(String csv) throws Exception {
        return assertInstanceOf(CsvImport.Ready.class, CsvRoundTripTest.read(csv)).visits().stream()
                .map(ImportedVisit::content)
                .toList();
    }
}
