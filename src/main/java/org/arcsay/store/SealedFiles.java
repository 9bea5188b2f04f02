package org.arcsay.store;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.time.Instant;
import java.util.Optional;
import javax.crypto.AEADBadTagException;
import org.arcsay.model.PatientCode;
import org.arcsay.store.StoreException.Problem;
import org.jspecify.annotations.Nullable;

/**
 * Files under a password: backups to be taken elsewhere and the journal of one patient. A lost password is final; nobody can
 * open the file without it.
 */
public final class SealedFiles {
    /** Fewest characters of a password; our default. */
    public static final int SHORTEST_PASSWORD = 12;

    private SealedFiles() {}

    /**
     * Writes a sealed copy of the whole database.
     *
     * @param target a name that is not taken
     * @param password at least {@value #SHORTEST_PASSWORD} characters; the caller clears it
     */
    public static void backUp(VisitStore store, Path target, char[] password) throws StoreException {
        requireLong(password);
        store.integrityCheck();
        Path plain = plainBeside(store.file());
        try {
            DurableFiles.replace(plain, unfinished -> Backups.copy(store.database(), unfinished));
            try (InputStream in = Files.newInputStream(plain)) {
                seal(in, target, fresh(password));
            }
        } catch (IOException e) {
            throw Failures.of(target, e);
        } finally {
            remove(plain);
        }
    }

    /**
     * Puts a sealed backup in the place of the database, as {@link Backups#restore} does with a plain one.
     *
     * @throws StoreException when the password is wrong, the sealed file is damaged, or the database is open
     */
    public static Optional<Path> restore(Path sealed, Path databaseFile, char[] password, Instant now)
            throws StoreException {
        Path plain = plainBeside(databaseFile.toAbsolutePath());
        try {
            unseal(sealed, plain, password);
            requireBackup(sealed, plain);
            return Backups.restore(plain, databaseFile, now);
        } finally {
            remove(plain);
        }
    }

    private static void requireBackup(Path sealed, Path plain) throws StoreException {
        try {
            Header.read(plain);
        } catch (StoreException e) {
            throw new StoreException(
                    Problem.REFUSED,
                    sealed + " is not a backup. If it is the export of a patient, use 'arcsay open-export' or"
                            + " 'arcsay import-patient'. Nothing was replaced.",
                    e);
        }
    }

    /**
     * Writes the journal of a patient as sealed JSON.
     *
     * @param target a name that is not taken
     * @param password at least {@value #SHORTEST_PASSWORD} characters; the caller clears it
     * @throws StoreException also when the patient is not known
     */
    public static void export(VisitStore store, PatientCode patient, Path target, char[] password)
            throws StoreException {
        requireLong(password);
        byte[] json = PatientExport.json(store, patient);
        try (InputStream in = new ByteArrayInputStream(json)) {
            seal(in, target, fresh(password));
        } catch (IOException e) {
            throw Failures.of(target, e);
        }
    }

    /**
     * Opens a sealed file into a plain one, which appears only when all of it was sound.
     *
     * @param target replaced if it is there
     * @throws StoreException when the password is wrong, or the file is damaged, newer, or not sealed by this program
     */
    public static void unseal(Path sealed, Path target, char[] password) throws StoreException {
        DurableFiles.replace(target, unfinished -> {
            try (InputStream in = open(sealed);
                    OutputStream out = Files.newOutputStream(unfinished)) {
                unseal(sealed, in, out, password);
            }
        });
    }

    /**
     * Whether the file begins like a sealed one.
     *
     * @throws StoreException when it cannot be read
     */
    public static boolean isSealed(Path file) throws StoreException {
        try (InputStream in = open(file)) {
            return Sealing.form(in.readNBytes(Sealing.HEADER)) != Sealing.Form.NOT_SEALED;
        } catch (IOException e) {
            throw Failures.of(file, e);
        }
    }

    /**
     * Spares the user typing a password for a file that is no sealed one.
     *
     * @throws StoreException when it is not
     */
    public static void requireSealed(Path file) throws StoreException {
        if (!isSealed(file)) {
            throw notSealed(file);
        }
    }

    private static StoreException notSealed(Path file) {
        return new StoreException(
                Problem.NOT_OURS, file + " is not a sealed file of this program. It was left untouched.");
    }

    /**
     * Opens the sealed export of a patient.
     *
     * @return its JSON
     * @throws StoreException when the password is wrong, the file is damaged, or it is not an export
     */
    public static String openExport(Path sealed, char[] password) throws StoreException {
        ByteArrayOutputStream json = new ByteArrayOutputStream();
        try (InputStream in = open(sealed)) {
            unseal(sealed, in, json, password);
        } catch (IOException e) {
            throw Failures.of(sealed, e);
        }
        String text = json.toString(StandardCharsets.UTF_8);
        if (!text.startsWith("{")) {
            throw new StoreException(
                    Problem.REFUSED,
                    sealed + " is not the export of a patient. If it is a sealed backup, use 'arcsay restore'.");
        }
        return text;
    }

    /**
     * Adds the patient of a sealed export to the records, all visits or none; visits get new numbers.
     *
     * @throws StoreException also when the patient is in the records already
     */
    public static PatientCode importPatient(VisitStore store, Path sealed, char[] password) throws StoreException {
        PatientExport export = PatientExport.parse(sealed, openExport(sealed, password));
        store.add(sealed, export);
        return new PatientCode(export.patient());
    }

    private static InputStream open(Path sealed) throws StoreException {
        try {
            return Files.newInputStream(sealed);
        } catch (IOException e) {
            throw Failures.of(sealed, e);
        }
    }

    private static Sealing fresh(char[] password) throws StoreException {
        try {
            return Sealing.fresh(password, Sealing.ITERATIONS);
        } catch (GeneralSecurityException e) {
            throw unsupported(e);
        }
    }

    static void seal(InputStream plain, Path target, Sealing sealing) throws StoreException {
        DurableFiles.create(target, unfinished -> {
            try (OutputStream out = Files.newOutputStream(unfinished)) {
                seal(plain, out, sealing);
            } catch (GeneralSecurityException e) {
                throw unsupported(e);
            }
        });
    }

    private static void seal(InputStream plain, OutputStream out, Sealing sealing)
            throws IOException, GeneralSecurityException {
        out.write(sealing.header());
        byte[] chunk = plain.readNBytes(Sealing.CHUNK);
        boolean last;
        do {
            byte[] following = plain.readNBytes(Sealing.CHUNK);
            last = following.length == 0;
            out.write(sealing.seal(chunk, last));
            chunk = following;
        } while (!last);
    }

    private static void unseal(Path file, InputStream sealed, OutputStream out, char[] password)
            throws IOException, StoreException {
        Sealing sealing = sealing(file, sealed.readNBytes(Sealing.HEADER), password);
        byte[] chunk = sealed.readNBytes(Sealing.CHUNK + Sealing.TAG);
        boolean last;
        do {
            byte[] following = sealed.readNBytes(Sealing.CHUNK + Sealing.TAG);
            last = following.length == 0;
            try {
                out.write(sealing.open(chunk, last));
            } catch (GeneralSecurityException e) {
                throw damaged(file, e);
            }
            chunk = following;
        } while (!last);
    }

    private static Sealing sealing(Path file, byte[] header, char[] password) throws StoreException {
        switch (Sealing.form(header)) {
            case NOT_SEALED -> throw notSealed(file);
            case NEWER ->
                throw new StoreException(
                        Problem.NEWER,
                        file + " was sealed by a newer version of this program. Install that version to open it.");
            case DAMAGED -> throw damaged(file, null);
            case OK -> {}
        }
        try {
            return Sealing.of(header, password);
        } catch (AEADBadTagException e) {
            throw new StoreException(
                    Problem.WRONG_PASSWORD,
                    "The password does not open " + file + ". The file itself looks whole. "
                            + "Check capital letters and keyboard language, then try again.",
                    e);
        } catch (GeneralSecurityException e) {
            throw unsupported(e);
        }
    }

    private static StoreException damaged(Path file, @Nullable Exception cause) {
        return new StoreException(
                Problem.DAMAGED,
                "The sealed file " + file + " is damaged or cut short; the password is not the reason. "
                        + "Nothing was taken from it. Use another copy.",
                cause);
    }

    private static StoreException unsupported(GeneralSecurityException e) {
        return new StoreException(
                Problem.FAILED, "This Java cannot seal or open files (AES-GCM is missing). Use another Java 17.", e);
    }

    private static void requireLong(char[] password) throws StoreException {
        if (password.length < SHORTEST_PASSWORD) {
            throw new StoreException(
                    Problem.REFUSED,
                    "The password is too short. Use at least " + SHORTEST_PASSWORD
                            + " characters and keep it safe: without it nobody can open the file.");
        }
    }

    /** A plain copy lives only in our own folder and only while it is needed. */
    private static Path plainBeside(Path database) {
        return database.resolveSibling(database.getFileName() + ".plain" + DurableFiles.UNFINISHED);
    }

    private static void remove(Path plain) throws StoreException {
        try {
            DurableFiles.removeDatabase(plain);
        } catch (IOException e) {
            throw Failures.of(plain, e);
        }
    }
}
