package org.arcsay.store;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.arcsay.store.Database.Connector;

/** A schema one step newer than the program's, to try the way there. */
final class Schemas {
    /** Rebuilds the readings with one more column, slowly enough to be interrupted in the middle. */
    private static final String NEXT_STEP = """
            CREATE TABLE busy (n INTEGER) STRICT;
            INSERT INTO busy WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 20000) SELECT i FROM n;
            CREATE TABLE instrument (event INTEGER PRIMARY KEY REFERENCES event, name TEXT NOT NULL) STRICT;
            INSERT INTO instrument SELECT event, 'goniometer' FROM reading;
            DROP TABLE busy;
            """;

    private Schemas() {}

    static Opening next() {
        return withStep(NEXT_STEP);
    }

    static Opening withStep(String sql) {
        List<String> scripts = new ArrayList<>(Schema.CURRENT.scripts());
        scripts.add(sql);
        return new Opening(Connector.DRIVER, new Schema(scripts), Clock.systemUTC(), Opening.SMALL);
    }
}
