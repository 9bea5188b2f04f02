package org.arcsay.report.text;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.arcsay.report.content.DemoCase;
import org.arcsay.report.content.Golden;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.VisitScript;
import org.arcsay.report.content.Written;
import org.junit.jupiter.api.Test;

class TextWriterTest {
    @Test
    void theDemoCaseReadsAsBefore() {
        Golden.assertText("report.txt", Written.bytes(new TextWriter(), DemoCase.report()));
    }

    @Test
    void anEntryThatIsNotConfirmedIsMarked() {
        Report report = Report.of(DemoCase.source(List.of(new VisitScript(1, "demo-08", "2026-04-01T08:00:00+02:00")
                .joint("MP", 50, -10)
                .confirm(1)
                .record())));

        String text = Written.text(new TextWriter(), report);

        assertTrue(text.contains("Visit of 2026-04-01 08:00 +02:00, preliminary"), text);
        assertTrue(text.contains("MP flexion, active: left 50 degrees\n"), text);
        assertTrue(text.contains("MP extension, active: left lacks 10 degrees (preliminary)\n"), text);
    }

    @Test
    void rejectedAndReplacedValuesAreNotAmongTheReadings() {
        String text = Written.text(new TextWriter(), DemoCase.report());

        assertFalse(text.contains("85 degrees"), text);
        assertFalse(text.contains("right 15 degrees"), text);
    }
}
