-- Patients, visits and the journal. Rows of the journal are only ever added; erasing one patient is the one way out.

CREATE TABLE patient (
    id INTEGER PRIMARY KEY,
    code TEXT NOT NULL UNIQUE
        CHECK (length(code) BETWEEN 1 AND 40 AND code NOT GLOB '*[^A-Za-z0-9._-]*' AND code GLOB '[A-Za-z0-9]*')
) STRICT;

CREATE TABLE visit (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    patient INTEGER NOT NULL REFERENCES patient,
    started_at TEXT NOT NULL
        CHECK (started_at GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]T[0-9][0-9]:[0-9][0-9]:[0-9][0-9]*'
            AND (started_at GLOB '*Z' OR started_at GLOB '*[+-][0-9][0-9]:[0-9][0-9]*')),
    plan TEXT NOT NULL
) STRICT;

CREATE INDEX visit_of_patient ON visit (patient);

-- One row for each thing that happened, in the order of its number, whatever the clock said.
CREATE TABLE event (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    visit INTEGER NOT NULL REFERENCES visit,
    number INTEGER NOT NULL CHECK (number >= 1),
    kind TEXT NOT NULL CHECK (kind IN ('TAKEN', 'REMARKED', 'RELEASED', 'REJECTED', 'CONFIRMED', 'ENDED')),
    at TEXT NOT NULL
        CHECK (at GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]T[0-9][0-9]:[0-9][0-9]:[0-9][0-9]*'
            AND (at GLOB '*Z' OR at GLOB '*[+-][0-9][0-9]:[0-9][0-9]*')),
    entry INTEGER CHECK (entry >= 1),
    by_whom TEXT NOT NULL,
    why TEXT NOT NULL,
    UNIQUE (visit, number),
    CHECK ((kind = 'ENDED') = (entry IS NULL)),
    CHECK (kind IN ('TAKEN', 'RELEASED', 'REJECTED') OR why = '')
) STRICT;

CREATE UNIQUE INDEX entry_taken_once ON event (visit, entry) WHERE kind = 'TAKEN';

-- What was taken. The amount is an exact decimal as text; its sign is in the kind of the value, never in the number.
CREATE TABLE reading (
    event INTEGER PRIMARY KEY REFERENCES event,
    held INTEGER NOT NULL CHECK (held IN (0, 1)),
    replaces INTEGER CHECK (replaces >= 1),
    side TEXT NOT NULL CHECK (side IN ('LEFT', 'RIGHT')),
    site TEXT NOT NULL CHECK (length(site) BETWEEN 1 AND 60 AND site NOT GLOB '*[^A-Za-z0-9 ]*'),
    motion TEXT NOT NULL CHECK (length(motion) BETWEEN 1 AND 60 AND motion NOT GLOB '*[^A-Z_]*'),
    mode TEXT NOT NULL CHECK (mode IN ('ACTIVE', 'PASSIVE')),
    placement TEXT NOT NULL CHECK (placement NOT GLOB '*[^A-Z_]*'),
    value_kind TEXT NOT NULL,
    amount TEXT,
    unit TEXT,
    word TEXT,
    words TEXT NOT NULL,
    source TEXT NOT NULL CHECK (source IN ('VOICE', 'TYPED')),
    confidence REAL NOT NULL CHECK (confidence BETWEEN 0 AND 1),
    start_ns INTEGER NOT NULL CHECK (start_ns >= 0),
    end_ns INTEGER NOT NULL CHECK (end_ns >= start_ns),
    grammar TEXT NOT NULL,
    model TEXT NOT NULL,
    rules TEXT NOT NULL,
    CHECK (CASE value_kind
        WHEN 'ANGLE' THEN unit = 'degrees'
        WHEN 'DEFICIT' THEN unit = 'degrees' AND CAST(amount AS REAL) > 0
        WHEN 'NEUTRAL' THEN unit = 'degrees' AND amount = '0'
        WHEN 'HYPEREXTENSION' THEN unit = 'degrees' AND CAST(amount AS REAL) > 0
        WHEN 'GAP' THEN unit IN ('mm', 'cm', 'in')
        WHEN 'SPAN' THEN unit IN ('mm', 'cm', 'in')
        WHEN 'SCORE' THEN unit = 'points' AND amount NOT GLOB '*[^0-9]*'
        WHEN 'NOT_TESTED' THEN unit IS NULL
        WHEN 'UNQUANTIFIED' THEN unit IS NULL
        ELSE 0 END),
    CHECK ((unit IS NULL) = (amount IS NULL) AND (unit IS NULL) = (word IS NOT NULL)),
    CHECK (amount IS NULL OR (amount GLOB '[0-9]*' AND amount NOT GLOB '*[^0-9.]*' AND amount NOT GLOB '*.*.*')),
    CHECK (amount IS NULL OR CAST(amount AS REAL)
        <= CASE unit WHEN 'degrees' THEN 180 WHEN 'points' THEN 10 ELSE 999 END)
) STRICT;

CREATE TABLE remark (
    event INTEGER NOT NULL REFERENCES event,
    position INTEGER NOT NULL CHECK (position >= 1),
    kind TEXT NOT NULL CHECK (kind IN ('PAIN', 'QUALITY', 'NOTE')),
    text TEXT NOT NULL CHECK (length(text) BETWEEN 1 AND 1000),
    score INTEGER CHECK (score BETWEEN 0 AND 10),
    PRIMARY KEY (event, position),
    CHECK (kind = 'PAIN' OR score IS NULL),
    CHECK (kind = 'NOTE' OR text NOT GLOB '*[^A-Z_]*')
) STRICT, WITHOUT ROWID;

-- What the rules said; the columns from value_kind on hold the value that they offered instead, if any.
CREATE TABLE finding (
    event INTEGER NOT NULL REFERENCES reading,
    position INTEGER NOT NULL CHECK (position >= 1),
    rule TEXT NOT NULL CHECK (rule <> ''),
    severity TEXT NOT NULL CHECK (severity IN ('NOTE', 'ASK', 'HOLD')),
    sentence TEXT NOT NULL,
    value_kind TEXT,
    amount TEXT,
    unit TEXT,
    word TEXT,
    PRIMARY KEY (event, position),
    CHECK (CASE WHEN value_kind IS NULL THEN amount IS NULL AND unit IS NULL AND word IS NULL
        ELSE (unit IS NULL) = (amount IS NULL) AND (unit IS NULL) = (word IS NOT NULL) END)
) STRICT, WITHOUT ROWID;

CREATE TABLE finding_number (
    event INTEGER NOT NULL,
    finding INTEGER NOT NULL,
    position INTEGER NOT NULL CHECK (position >= 1),
    label TEXT NOT NULL,
    number TEXT NOT NULL,
    unit TEXT NOT NULL,
    PRIMARY KEY (event, finding, position),
    FOREIGN KEY (event, finding) REFERENCES finding (event, position)
) STRICT, WITHOUT ROWID;

-- A checksum (SHA-256) over the rows of an event and the checksum before it; the first follows the head of the visit.
CREATE TABLE seal (
    event INTEGER PRIMARY KEY REFERENCES event,
    digest BLOB NOT NULL CHECK (length(digest) = 32)
) STRICT;

-- A row stands here only inside the transaction that erases that patient; without it the triggers below refuse.
CREATE TABLE erasing (
    patient INTEGER PRIMARY KEY
) STRICT;

CREATE TRIGGER patient_fixed BEFORE UPDATE ON patient
BEGIN SELECT raise(ABORT, 'the journal is append-only'); END;

CREATE TRIGGER visit_fixed BEFORE UPDATE ON visit
BEGIN SELECT raise(ABORT, 'the journal is append-only'); END;

CREATE TRIGGER event_fixed BEFORE UPDATE ON event
BEGIN SELECT raise(ABORT, 'the journal is append-only'); END;

CREATE TRIGGER reading_fixed BEFORE UPDATE ON reading
BEGIN SELECT raise(ABORT, 'the journal is append-only'); END;

CREATE TRIGGER remark_fixed BEFORE UPDATE ON remark
BEGIN SELECT raise(ABORT, 'the journal is append-only'); END;

CREATE TRIGGER finding_fixed BEFORE UPDATE ON finding
BEGIN SELECT raise(ABORT, 'the journal is append-only'); END;

CREATE TRIGGER finding_number_fixed BEFORE UPDATE ON finding_number
BEGIN SELECT raise(ABORT, 'the journal is append-only'); END;

CREATE TRIGGER seal_fixed BEFORE UPDATE ON seal
BEGIN SELECT raise(ABORT, 'the journal is append-only'); END;

CREATE TRIGGER patient_kept BEFORE DELETE ON patient
WHEN NOT EXISTS (SELECT 1 FROM erasing WHERE patient = OLD.id)
BEGIN SELECT raise(ABORT, 'the journal is append-only'); END;

CREATE TRIGGER visit_kept BEFORE DELETE ON visit
WHEN NOT EXISTS (SELECT 1 FROM erasing WHERE patient = OLD.patient)
BEGIN SELECT raise(ABORT, 'the journal is append-only'); END;

CREATE TRIGGER event_kept BEFORE DELETE ON event
WHEN NOT EXISTS (SELECT 1 FROM erasing JOIN visit USING (patient) WHERE visit.id = OLD.visit)
BEGIN SELECT raise(ABORT, 'the journal is append-only'); END;

CREATE TRIGGER reading_kept BEFORE DELETE ON reading
WHEN NOT EXISTS (SELECT 1 FROM erasing JOIN visit USING (patient) JOIN event ON event.visit = visit.id
    WHERE event.id = OLD.event)
BEGIN SELECT raise(ABORT, 'the journal is append-only'); END;

CREATE TRIGGER remark_kept BEFORE DELETE ON remark
WHEN NOT EXISTS (SELECT 1 FROM erasing JOIN visit USING (patient) JOIN event ON event.visit = visit.id
    WHERE event.id = OLD.event)
BEGIN SELECT raise(ABORT, 'the journal is append-only'); END;

CREATE TRIGGER finding_kept BEFORE DELETE ON finding
WHEN NOT EXISTS (SELECT 1 FROM erasing JOIN visit USING (patient) JOIN event ON event.visit = visit.id
    WHERE event.id = OLD.event)
BEGIN SELECT raise(ABORT, 'the journal is append-only'); END;

CREATE TRIGGER finding_number_kept BEFORE DELETE ON finding_number
WHEN NOT EXISTS (SELECT 1 FROM erasing JOIN visit USING (patient) JOIN event ON event.visit = visit.id
    WHERE event.id = OLD.event)
BEGIN SELECT raise(ABORT, 'the journal is append-only'); END;

CREATE TRIGGER seal_kept BEFORE DELETE ON seal
WHEN NOT EXISTS (SELECT 1 FROM erasing JOIN visit USING (patient) JOIN event ON event.visit = visit.id
    WHERE event.id = OLD.event)
BEGIN SELECT raise(ABORT, 'the journal is append-only'); END;
