-- What a patient's treatment protocol allows, from a moment on. A change is a new row; the newest one before a visit holds for it.
-- Digest: SHA-256 over the digest of the row before of that patient, if any, and the code and the columns from number to text.

CREATE TABLE protocol (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    patient INTEGER NOT NULL REFERENCES patient,
    number INTEGER NOT NULL CHECK (number >= 1),
    at TEXT NOT NULL
        CHECK (at GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]T[0-9][0-9]:[0-9][0-9]:[0-9][0-9]*'
            AND (at GLOB '*Z' OR at GLOB '*[+-][0-9][0-9]:[0-9][0-9]*')),
    by_whom TEXT NOT NULL,
    text TEXT NOT NULL CHECK (length(text) <= 4000),
    digest BLOB NOT NULL CHECK (length(digest) = 32),
    UNIQUE (patient, number)
) STRICT;

CREATE TRIGGER protocol_fixed BEFORE UPDATE ON protocol
BEGIN SELECT raise(ABORT, 'the journal is append-only'); END;

CREATE TRIGGER protocol_kept BEFORE DELETE ON protocol
WHEN NOT EXISTS (SELECT 1 FROM erasing WHERE patient = OLD.patient)
BEGIN SELECT raise(ABORT, 'the journal is append-only'); END;
