package org.arcsay.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.PatientCode;
import org.arcsay.model.PatientProtocol;
import org.arcsay.model.ProtocolVersion;
import org.arcsay.model.Visit;
import org.arcsay.session.Journal;
import org.arcsay.session.JournalException;
import org.arcsay.store.Database.Work;
import org.arcsay.store.StoreException.Problem;

/**
 * Safe for any thread: calls run one at a time. The SQLite file with all visits.
 *
 * <p>What a call that stores something has returned from survives a crash of the program and a loss of power, as far as the
 * disk keeps what it confirmed. A call that throws has stored nothing.
 */
public final class VisitStore implements AutoCloseable {
    private final Database database;
    private final Optional<InstanceLock> lock;
    private final Optional<LookThrough> look;

    private VisitStore(Database database, Optional<InstanceLock> lock, Optional<LookThrough> look) {
        this.database = database;
        this.lock = lock;
        this.look = look;
    }

    /**
     * Opens the file for reading and writing, creates it if it is not there, and brings an older one up to date. A large file is
     * looked through meanwhile: it can be read at once, and the first call that stores something waits.
     *
     * @throws StoreException when another process works with it, or it is not ours, newer, damaged or not writable; the file
     *     is then as it was
     */
    public static VisitStore open(Path databaseFile) throws StoreException {
        return open(databaseFile, Opening.STANDARD);
    }

    static VisitStore open(Path databaseFile, Opening opening) throws StoreException {
        Path file = Opening.real(databaseFile);
        InstanceLock lock = InstanceLock.acquire(file);
        try {
            DurableFiles.removeUnfinished(
                    DurableFiles.folderOf(file), file.getFileName().toString());
            return open(file, opening, lock);
        } catch (StoreException e) {
            lock.closeAfter(e);
            throw e.problem() == Problem.DAMAGED ? withAdvice(file, e) : e;
        } catch (RuntimeException e) {
            lock.closeAfter(e);
            throw e;
        }
    }

    private static VisitStore open(Path file, Opening opening, InstanceLock lock) throws StoreException {
        boolean large = opening.isLarge(file);
        Database database = opening.forWriting(file, large);
        try {
            Optional<LookThrough> look = large
                    ? Optional.of(LookThrough.begin(opening.forReading(file), damage -> withAdvice(file, damage)))
                    : Optional.empty();
            return new VisitStore(database, Optional.of(lock), look);
        } catch (StoreException | RuntimeException e) {
            database.closeAfter(e);
            throw e;
        }
    }

    private static StoreException withAdvice(Path file, StoreException damage) throws StoreException {
        String advice = Backups.beside(file)
                .lastGood()
                .map(backup -> " The last good backup was made " + backup.made()
                        + ": 'arcsay restore --last-good' puts it in" + " place and keeps the damaged file.")
                .orElse(" There is no good backup beside it; restore one from elsewhere with 'arcsay restore FILE'.");
        String look = " 'arcsay list' and 'arcsay show' tell what can still be read of it.";
        return new StoreException(Problem.DAMAGED, damage.getMessage() + look + advice, damage);
    }

    /**
     * Opens the file for looking only; possible while another process writes it, and for a damaged file as far as it can be
     * read.
     *
     * @throws StoreException when it is missing, not ours, or newer
     */
    public static VisitStore openReadOnly(Path databaseFile) throws StoreException {
        Path file = Opening.real(databaseFile);
        try {
            return new VisitStore(Opening.STANDARD.forReading(file), Optional.empty(), Optional.empty());
        } catch (StoreException e) {
            throw e.problem() == Problem.DAMAGED ? withAdvice(file, e) : e;
        }
    }

    /** The file that is open. */
    public Path file() {
        return database.file();
    }

    Database database() {
        return database;
    }

    /** Stores something, once it is known that the file is sound. */
    private <T> T write(Work<T> work) throws StoreException {
        if (look.isPresent()) {
            look.get().requireSound();
        }
        return database.write(work);
    }

    /** Whether the patient has a visit here. */
    public boolean knows(PatientCode patient) throws StoreException {
        return database.read(connection -> patientRow(connection, patient).isPresent());
    }

    /**
     * Begins a visit; a patient not known so far becomes known.
     *
     * @param startedAt with the offset of the local clock
     * @param plan name of the measuring plan that is followed, or empty
     */
    public Visit begin(PatientCode patient, OffsetDateTime startedAt, String plan) throws StoreException {
        return write(connection -> {
            long row = knownPatient(connection, patient);
            return Visit.begun(insertVisit(connection, row, startedAt, plan), patient, startedAt);
        });
    }

    /**
     * Sets what a patient's treatment protocol allows, for visits that begin from then on; a patient not known so far becomes
     * known.
     */
    public void setProtocol(PatientCode patient, ProtocolVersion version) throws StoreException {
        database.write(Work.only(connection -> {
            long row = knownPatient(connection, patient);
            requireSound(() -> new ProtocolRows(connection, row).add(patient.text(), version));
        }));
    }

    /** What a patient's treatment protocol said, oldest first; none where it was never set. */
    public List<ProtocolVersion> protocols(PatientCode patient) throws StoreException {
        return database.read(connection -> {
            Optional<Long> row = patientRow(connection, patient);
            return row.isPresent() ? sound(() -> new ProtocolRows(connection, row.get()).all()) : List.of();
        });
    }

    /** What the protocol allowed at a moment, such as the begin of a visit. */
    public PatientProtocol protocol(PatientCode patient, OffsetDateTime moment) throws StoreException {
        return ProtocolRows.at(protocols(patient), moment)
                .map(ProtocolVersion::protocol)
                .orElseGet(PatientProtocol::none);
    }

    /**
     * Adds a patient with all visits, in one transaction.
     *
     * @param source named in messages
     */
    void add(Path source, PatientExport export) throws StoreException {
        PatientCode patient = new PatientCode(export.patient());
        try {
            write(Work.only(connection -> {
                if (patientRow(connection, patient).isPresent()) {
                    throw new StoreException(
                            Problem.REFUSED,
                            "Patient " + patient + " is in the records already. Nothing was stored. "
                                    + "Import into an empty data folder (--home), or erase the patient here first.");
                }
                long row = insertPatient(connection, patient);
                insert(connection, row, export.visits());
                for (PatientExport.ProtocolExport protocol : export.protocols()) {
                    new ProtocolRows(connection, row).add(patient.text(), protocol.version());
                }
            }));
        } catch (NullPointerException | IllegalArgumentException e) {
            throw PatientExport.incomplete(source, e);
        }
    }

    private static void insert(Connection connection, long patient, List<PatientExport.VisitExport> visits)
            throws SQLException {
        EventWriter writer = new EventWriter(connection);
        for (PatientExport.VisitExport visit : visits) {
            long id = insertVisit(connection, patient, visit.startedAt(), visit.plan());
            for (JournalEvent event : visit.events()) {
                writer.append(id, event);
            }
        }
    }

    /**
     * Adds whole visits that come from elsewhere: all of them in one step, or none.
     *
     * @return the visits as they are stored, with their new numbers, in the same order
     * @throws StoreException when a patient has a visit here already that began at the same moment
     * @throws IllegalStateException when the events of a visit contradict each other
     */
    public List<Visit> addAll(List<WholeVisit> visits) throws StoreException {
        return write(connection -> {
            for (WholeVisit visit : visits) {
                requireNew(connection, visit);
            }
            List<Visit> added = new ArrayList<>();
            for (WholeVisit visit : visits) {
                added.add(add(connection, visit));
            }
            return List.copyOf(added);
        });
    }

    private static Visit add(Connection connection, WholeVisit whole) throws SQLException {
        long id = insertVisit(connection, knownPatient(connection, whole.patient()), whole.startedAt(), whole.plan());
        Visit visit = whole.visit(id);
        EventWriter writer = new EventWriter(connection);
        for (JournalEvent event : whole.journal()) {
            writer.append(id, event);
        }
        return visit;
    }

    private static void requireNew(Connection connection, WholeVisit visit) throws SQLException, StoreException {
        List<Long> same = ids(
                connection,
                "SELECT visit.id FROM visit JOIN patient ON patient.id = visit.patient"
                        + " WHERE code = ? AND julianday(started_at) = julianday(?)",
                query -> {
                    query.setString(1, visit.patient().text());
                    query.setString(2, EventWriter.timestamp(visit.startedAt()));
                });
        if (!same.isEmpty()) {
            throw new StoreException(
                    Problem.REFUSED,
                    "Visit " + same.get(0) + " of patient " + visit.patient() + ", begun at " + visit.startedAt()
                            + ", is in the records already. Nothing was added. Take it out of the file, or leave the records"
                            + " as they are.");
        }
    }

    /** The journal of a visit; each event is checked against the state so far and then stored durably. */
    public Journal journal(long visitId) {
        return event -> append(visitId, event);
    }

    private void append(long visitId, JournalEvent event) throws JournalException {
        try {
            write(Work.only(connection -> {
                requireFits(state(connection, visitId).orElseThrow(() -> unknownVisit(visitId)), event);
                requireSound(() -> new EventWriter(connection).append(visitId, event));
            }));
        } catch (StoreException e) {
            throw new JournalException(String.valueOf(e.getMessage()), e);
        }
    }

    private static void requireFits(Visit visit, JournalEvent event) throws StoreException {
        try {
            visit.apply(event);
        } catch (IllegalStateException e) {
            throw new StoreException(
                    Problem.REFUSED,
                    "The records of visit " + visit.id() + " have changed meanwhile (" + e.getMessage()
                            + "). Nothing was stored. Open the visit again and look at its entries.",
                    e);
        }
    }

    /** The visit with that number, in the state that its journal leads to. */
    public Optional<Visit> visit(long id) throws StoreException {
        return database.read(connection -> load(connection, id));
    }

    /** All visits of a patient in the order in which they were begun; none for an unknown patient. */
    public List<Visit> visits(PatientCode patient) throws StoreException {
        return loadAll(
                "SELECT visit.id FROM visit JOIN patient ON patient.id = visit.patient WHERE code = ? ORDER BY visit.id",
                statement -> statement.setString(1, patient.text()));
    }

    /**
     * All visits of a patient together with their events, read at one moment, in the order in which they were stored.
     *
     * @param with makes the result of one visit from its state and its events
     */
    public <T> List<T> visits(PatientCode patient, BiFunction<Visit, List<JournalEvent>, T> with)
            throws StoreException {
        return database.read(connection -> {
            List<T> made = new ArrayList<>();
            for (Visit begun : begun(connection, patient)) {
                List<JournalEvent> events = events(connection, begun.id());
                made.add(with.apply(sound(() -> begun.replay(events)), events));
            }
            return List.copyOf(made);
        });
    }

    /** Without entries. */
    private List<Visit> begun(Connection connection, PatientCode patient) throws SQLException, StoreException {
        List<Visit> visits = new ArrayList<>();
        try (PreparedStatement query = connection.prepareStatement(
                "SELECT visit.id, started_at FROM visit JOIN patient ON patient.id = visit.patient WHERE code = ?"
                        + " ORDER BY visit.id")) {
            query.setString(1, patient.text());
            try (ResultSet row = query.executeQuery()) {
                while (row.next()) {
                    visits.add(
                            sound(() -> Visit.begun(row.getLong(1), patient, OffsetDateTime.parse(row.getString(2)))));
                }
            }
        }
        return visits;
    }

    /** The visits begun last, newest first. */
    public List<Visit> recent(int limit) throws StoreException {
        return loadAll("SELECT id FROM visit ORDER BY id DESC LIMIT ?", statement -> statement.setInt(1, limit));
    }

    /** All patients, in the order of their codes. */
    public List<PatientCode> patients() throws StoreException {
        return database.read(connection -> {
            List<PatientCode> codes = new ArrayList<>();
            try (PreparedStatement query = connection.prepareStatement("SELECT code FROM patient ORDER BY code");
                    ResultSet row = query.executeQuery()) {
                while (row.next()) {
                    codes.add(sound(() -> new PatientCode(row.getString(1))));
                }
            }
            return List.copyOf(codes);
        });
    }

    /** The measuring plan of a visit, if one was named. */
    public Optional<String> plan(long visitId) throws StoreException {
        return database.read(connection -> {
            try (PreparedStatement query = connection.prepareStatement("SELECT plan FROM visit WHERE id = ?")) {
                query.setLong(1, visitId);
                try (ResultSet row = query.executeQuery()) {
                    return row.next()
                            ? Optional.of(row.getString(1)).filter(plan -> !plan.isEmpty())
                            : Optional.empty();
                }
            }
        });
    }

    /** Everything that happened in a visit, in order. */
    public List<JournalEvent> history(long visitId) throws StoreException {
        return database.read(connection -> events(connection, visitId));
    }

    /**
     * Takes a patient and all visits of that patient out of the file for good. Backups and exports keep what they hold; see
     * {@link Backups#holding}.
     *
     * @throws StoreException when the patient is not known
     */
    public Erasure erase(PatientCode patient) throws StoreException {
        Erasure erasure = write(connection -> Erasure.of(
                connection,
                patientRow(connection, patient)
                        .orElseThrow(() -> new StoreException(
                                Problem.REFUSED,
                                "There is no patient " + patient
                                        + " in the records. Nothing was erased. Check the code."))));
        scrub(patient);
        return erasure;
    }

    private void scrub(PatientCode patient) throws StoreException {
        try {
            Erasure.scrub(database);
        } catch (StoreException e) {
            throw new StoreException(
                    e.problem(),
                    "Patient " + patient + " is erased, but traces may stay in the log beside " + file()
                            + " until the program is closed. Close it now.",
                    e);
        }
    }

    /**
     * Looks through the whole file: pages, indexes, what rows point at, and the checksum of every event.
     *
     * @throws StoreException when it is damaged; the message names the last good backup
     */
    public void integrityCheck() throws StoreException {
        try {
            FullCheck.require(database);
        } catch (StoreException e) {
            throw e.problem() == Problem.DAMAGED ? withAdvice(file(), e) : e;
        }
    }

    /** Sets the parameters of a query. */
    private interface Parameters {
        void set(PreparedStatement statement) throws SQLException;
    }

    private List<Visit> loadAll(String query, Parameters parameters) throws StoreException {
        return database.read(connection -> {
            List<Visit> visits = new ArrayList<>();
            for (long id : ids(connection, query, parameters)) {
                load(connection, id).ifPresent(visits::add);
            }
            return List.copyOf(visits);
        });
    }

    private static List<Long> ids(Connection connection, String query, Parameters parameters) throws SQLException {
        List<Long> ids = new ArrayList<>();
        try (PreparedStatement statement = connection.prepareStatement(query)) {
            parameters.set(statement);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    ids.add(row.getLong(1));
                }
            }
        }
        return ids;
    }

    private Optional<Visit> load(Connection connection, long id) throws SQLException, StoreException {
        verify(connection, id);
        return state(connection, id);
    }

    /** The visit as its rows say, whether or not they are as they were stored. */
    private Optional<Visit> state(Connection connection, long id) throws SQLException, StoreException {
        try (PreparedStatement query = connection.prepareStatement(
                "SELECT code, started_at FROM visit JOIN patient ON patient.id = visit.patient WHERE visit.id = ?")) {
            query.setLong(1, id);
            try (ResultSet row = query.executeQuery()) {
                return row.next() ? Optional.of(sound(() -> state(connection, id, row))) : Optional.empty();
            }
        }
    }

    private static Visit state(Connection connection, long id, ResultSet head) throws SQLException {
        return Visit.begun(id, new PatientCode(head.getString(1)), OffsetDateTime.parse(head.getString(2)))
                .replay(new EventReader(connection, id).events());
    }

    private List<JournalEvent> events(Connection connection, long visitId) throws SQLException, StoreException {
        verify(connection, visitId);
        return sound(() -> new EventReader(connection, visitId).events());
    }

    private void verify(Connection connection, long visitId) throws SQLException, StoreException {
        requireSound(() -> {
            try (Seals seals = new Seals(connection, visitId)) {
                seals.verify();
            }
        });
    }

    /** Makes something of rows. */
    private interface Made<T> {
        T make() throws SQLException;
    }

    /** Reads or writes rows. */
    private interface Doing {
        void run() throws SQLException;
    }

    private void requireSound(Doing doing) throws SQLException, StoreException {
        sound(() -> {
            doing.run();
            return true;
        });
    }

    /** Rows that make no sense are damage, and the user hears it as that. */
    private <T> T sound(Made<T> made) throws SQLException, StoreException {
        try {
            return made.make();
        } catch (IllegalArgumentException
                | IllegalStateException
                | ArithmeticException
                | DateTimeException
                | NullPointerException e) {
            StoreException damaged = StoreException.damaged(database.file(), "an entry is not as it was stored");
            damaged.initCause(e);
            throw damaged;
        }
    }

    private static Optional<Long> patientRow(Connection connection, PatientCode patient) throws SQLException {
        return ids(
                        connection,
                        "SELECT id FROM patient WHERE code = ?",
                        statement -> statement.setString(1, patient.text()))
                .stream()
                .findFirst();
    }

    private static long knownPatient(Connection connection, PatientCode patient) throws SQLException {
        Optional<Long> known = patientRow(connection, patient);
        return known.isPresent() ? known.get() : insertPatient(connection, patient);
    }

    private static long insertPatient(Connection connection, PatientCode patient) throws SQLException {
        return ids(
                        connection,
                        "INSERT INTO patient (code) VALUES (?) RETURNING id",
                        statement -> statement.setString(1, patient.text()))
                .get(0);
    }

    private static long insertVisit(Connection connection, long patient, OffsetDateTime startedAt, String plan)
            throws SQLException {
        return ids(
                        connection,
                        "INSERT INTO visit (patient, started_at, plan) VALUES (?, ?, ?) RETURNING id",
                        insert -> {
                            insert.setLong(1, patient);
                            insert.setString(2, EventWriter.timestamp(startedAt));
                            insert.setString(3, plan);
                        })
                .get(0);
    }

    private static StoreException unknownVisit(long id) {
        return new StoreException(
                Problem.REFUSED,
                "There is no visit " + id + " in the records. Nothing was stored. List the visits first.");
    }

    /** Closes the file and lets other processes write it. */
    @Override
    public void close() throws StoreException {
        look.ifPresent(LookThrough::stop);
        try {
            database.close();
        } finally {
            if (lock.isPresent()) {
                lock.get().close();
            }
        }
    }
}
