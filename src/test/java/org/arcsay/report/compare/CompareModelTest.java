package org.arcsay.report.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Side;
import org.arcsay.report.Format;
import org.arcsay.report.ReportWriters;
import org.arcsay.report.StoredVisits;
import org.arcsay.report.content.DemoCase;
import org.arcsay.report.content.VisitRecord;
import org.arcsay.store.StoreException;
import org.arcsay.store.VisitStore;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CompareModelTest {
    private static final PatientCode DEMO = new PatientCode("demo-07");

    @TempDir
    private Path folder;

    private final CompareModel model = new CompareModel(new DemoRecords(), DemoCase::source, ReportWriters.standard());

    @BeforeEach
    void choose() {
        model.choosePatient(DEMO);
    }

    @Test
    void theNewestVisitIsShownFirst() {
        assertEquals(
                List.of(4L, 3L, 2L, 1L),
                model.visits().stream().map(VisitLine::id).toList());
        assertEquals(
                "23 Mar 2026, 10:05\n29 readings, amended",
                model.visits().get(0).words());
        assertEquals(4, model.report().orElseThrow().current().visit().id());
        assertEquals(Side.RIGHT, model.side());
    }

    @Test
    void aLineComparesWithTheOtherHandAndTheLastVisit() {
        CompareLine line = line("IP extension, active");

        assertEquals("lacks 5\u00B0", line.now());
        assertEquals("hyperextends 55\u00B0", line.other());
        assertEquals("60 less straight, beyond error", line.beside().words());
        assertTrue(line.beside().counts());
        assertEquals("lacks 15\u00B0", line.last());
        assertEquals("10 straighter, within error", line.since().words());
        assertFalse(line.since().counts());
    }

    @Test
    void anEarlierVisitIsComparedOnlyWithThoseBeforeIt() {
        model.chooseVisit(2);

        assertEquals("lacks 35\u00B0", line("IP extension, active").last());
        assertEquals(2, model.trends().get(0).steps().size());
        assertEquals("", line("IP flexion, active").other(), "the left hand was not measured that day");
    }

    @Test
    void aHandWithoutReadingsGivesWayToTheOtherOne() {
        model.chooseSide(Side.LEFT);
        model.chooseVisit(3);

        assertEquals(Side.RIGHT, model.side());
    }

    @Test
    void everyPictureHasItsText() {
        assertEquals(
                "flexion 58 degrees, left 84 degrees; extension lacks 5 degrees, left hyperextends 55 degrees",
                model.ranges().get(1).words());
        assertTrue(model.trends()
                .get(1)
                .words()
                .startsWith("IP, active range: 2026-01-12 lacks 35 degrees, to 40 degrees"));
        assertEquals(9, model.courses().size());
        assertTrue(model.totals().get(0).contains("103 degrees"), model.totals().toString());
    }

    @Test
    void theReportIsExportedAndTheMessageSaysWhere() {
        Path file = folder.resolve(model.fileName(Format.TEXT));
        model.export(Format.TEXT, file);

        assertEquals("arcsay-demo-07-visit-4.txt", file.getFileName().toString());
        assertTrue(Files.exists(file));
        assertTrue(model.message().contains(file.toString()), model.message());
    }

    @Test
    void recordsThatCannotBeReadGiveAMessage() {
        CompareModel broken = new CompareModel(new MissingRecords(), DemoCase::source, ReportWriters.standard());

        assertEquals(List.of(), broken.patients());
        assertTrue(broken.message().startsWith("There is no file"), broken.message());
        broken.choosePatient(DEMO);
        assertTrue(broken.report().isEmpty());
        assertEquals(List.of(), broken.lines());
        broken.export(Format.PDF, folder.resolve("x.pdf"));
        assertEquals("Choose a visit first.", broken.message());
    }

    private CompareLine line(String measure) {
        return model.lines().stream()
                .filter(line -> line.measure().equals(measure))
                .findFirst()
                .orElseThrow();
    }

    private final class MissingRecords implements CompareModel.Records {
        @Override
        public List<PatientCode> patients() throws StoreException {
            try (VisitStore store = VisitStore.openReadOnly(folder.resolve("missing.db"))) {
                return store.patients();
            }
        }

        @Override
        public List<VisitRecord> visits(PatientCode patient) throws StoreException {
            try (VisitStore store = VisitStore.openReadOnly(folder.resolve("missing.db"))) {
                return StoredVisits.of(store, patient);
            }
        }
    }
}
