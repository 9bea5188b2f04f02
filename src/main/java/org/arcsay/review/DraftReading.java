package org.arcsay.review;

import java.util.List;
import java.util.Optional;
import org.arcsay.model.Finding;
import org.arcsay.model.Reading;
import org.arcsay.model.Remark;

/**
 * What a draft would become if it were saved now.
 *
 * @param reading present exactly when there are no problems
 * @param remarks those that stay and those to be added
 * @param problems what is wrong, field by field
 * @param findings what the rules would say about the reading
 */
public record DraftReading(
        Optional<Reading> reading, List<Remark> remarks, List<Problem> problems, List<Finding> findings) {
    public DraftReading {
        remarks = List.copyOf(remarks);
        problems = List.copyOf(problems);
        findings = List.copyOf(findings);
    }

    /** The field that a problem belongs to. */
    public enum Field {
        SIDE,
        MEASURE,
        MODE,
        VALUE,
        PAIN,
        NOTE
    }

    /** What is wrong with one field and what to do. */
    public record Problem(Field field, String message) {}

    /** What is wrong with that field, or empty. */
    public String problem(Field field) {
        return problems.stream()
                .filter(problem -> problem.field() == field)
                .map(Problem::message)
                .findFirst()
                .orElse("");
    }

    DraftReading withFindings(List<Finding> judged) {
        return new DraftReading(reading, remarks, problems, judged);
    }
}
