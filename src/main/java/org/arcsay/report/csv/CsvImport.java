package org.arcsay.report.csv;

import java.util.List;

/** What reading a file led to: all of its visits, or all of its problems and no visit. */
public sealed interface CsvImport {
    /** The file is sound. */
    record Ready(List<ImportedVisit> visits) implements CsvImport {
        public Ready {
            visits = List.copyOf(visits);
        }
    }

    /** The file is not sound, so nothing of it may be stored. */
    record Refused(List<ImportProblem> problems) implements CsvImport {
        public Refused {
            problems = List.copyOf(problems);
        }
    }
}
