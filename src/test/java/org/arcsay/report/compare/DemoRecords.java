package org.arcsay.report.compare;

import java.util.List;
import org.arcsay.model.PatientCode;
import org.arcsay.report.content.DemoCase;
import org.arcsay.report.content.VisitRecord;

/** The visits of the invented patient. */
public final class DemoRecords implements CompareModel.Records {
    @Override
    public List<PatientCode> patients() {
        return List.of(DemoCase.visits().get(0).visit().patient());
    }

    @Override
    public List<VisitRecord> visits(PatientCode patient) {
        return DemoCase.visits();
    }
}
