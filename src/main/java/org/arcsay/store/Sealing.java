package org.arcsay.store;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.text.Normalizer;
import java.util.Arrays;
import java.util.zip.CRC32;
import javax.crypto.AEADBadTagException;
import javax.crypto.Cipher;
import javax.crypto.SecretKeyFactory;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.PBEKeySpec;
import javax.crypto.spec.SecretKeySpec;

/**
 * For one thread. The keys and the header of one sealed file, and the sealing of its chunks.
 *
 * <p>The header, 62 bytes, numbers in big-endian order: 8 bytes {@code ARCSEAL} and a line feed; 1 byte version (1); 1 byte
 * reserved (0); 4 bytes iterations; 16 bytes salt; 8 bytes nonce prefix; 20 bytes check of the password; 4 bytes CRC-32 of the
 * 58 bytes before. PBKDF2-HMAC-SHA256 (RFC 8018) makes 52 bytes of the password in NFC and UTF-8: 32 are the key, 20 the check.
 * Each chunk is AES-256-GCM (NIST SP 800-38D) with a 96-bit nonce of prefix and chunk number, a 128-bit tag, and as additional
 * data the header and one byte that is 1 for the last chunk and 0 before. So chunks cannot be altered, dropped, repeated or
 * taken from another file, and a wrong password is told from damage.
 */
final class Sealing {
    static final int HEADER = 62;
    static final int TAG = 16;
    /** Plain bytes in every chunk but the last, which may hold fewer. */
    static final int CHUNK = 1 << 16;
    /** Rounds for new files, the figure of the OWASP Password Storage Cheat Sheet (2023) for PBKDF2-HMAC-SHA256. */
    static final int ITERATIONS = 600_000;

    private static final int MOST_ITERATIONS = 10_000_000;
    private static final byte[] MAGIC = "ARCSEAL\n".getBytes(StandardCharsets.US_ASCII);
    private static final byte VERSION = 1;
    private static final int SALT = 16;
    private static final int PREFIX = 8;
    private static final int KEY = 32;
    private static final int CHECK = 20;
    private static final int CRC_AT = HEADER - 4;
    private static final int CHECK_AT = CRC_AT - CHECK;

    /** What a header says before the password is known. */
    enum Form {
        OK,
        NOT_SEALED,
        NEWER,
        DAMAGED
    }

    private final byte[] header;
    private final byte[] prefix;
    private final SecretKeySpec key;
    private int number;

    private Sealing(byte[] header, byte[] prefix, byte[] key) {
        this.header = header;
        this.prefix = prefix;
        this.key = new SecretKeySpec(key, "AES");
    }

    /** For a new file, with fresh random salt and nonces. */
    static Sealing fresh(char[] password, int iterations) throws GeneralSecurityException {
        SecureRandom random = new SecureRandom();
        byte[] salt = new byte[SALT];
        byte[] prefix = new byte[PREFIX];
        random.nextBytes(salt);
        random.nextBytes(prefix);
        byte[] derived = derive(password, salt, iterations, KEY + CHECK);
        ByteBuffer header = ByteBuffer.allocate(HEADER)
                .put(MAGIC)
                .put(VERSION)
                .put((byte) 0)
                .putInt(iterations)
                .put(salt)
                .put(prefix)
                .put(derived, KEY, CHECK);
        header.putInt(crc(header.array()));
        return new Sealing(header.array(), prefix, Arrays.copyOf(derived, KEY));
    }

    static Form form(byte[] header) {
        if (header.length < MAGIC.length || !Arrays.equals(MAGIC, Arrays.copyOf(header, MAGIC.length))) {
            return Form.NOT_SEALED;
        }
        if (header.length < HEADER || ByteBuffer.wrap(header).getInt(CRC_AT) != crc(header)) {
            return Form.DAMAGED;
        }
        if (header[MAGIC.length] != VERSION) {
            return Form.NEWER;
        }
        int iterations = ByteBuffer.wrap(header).getInt(MAGIC.length + 2);
        return iterations < 1 || iterations > MOST_ITERATIONS ? Form.DAMAGED : Form.OK;
    }

    /**
     * For a file whose header is {@link Form#OK}.
     *
     * @throws AEADBadTagException when the password is wrong
     */
    static Sealing of(byte[] header, char[] password) throws GeneralSecurityException {
        ByteBuffer buffer = ByteBuffer.wrap(header).position(MAGIC.length + 2);
        int iterations = buffer.getInt();
        byte[] salt = new byte[SALT];
        byte[] prefix = new byte[PREFIX];
        buffer.get(salt).get(prefix);
        byte[] derived = derive(password, salt, iterations, KEY + CHECK);
        byte[] check = Arrays.copyOfRange(header, CHECK_AT, CRC_AT);
        if (!MessageDigest.isEqual(check, Arrays.copyOfRange(derived, KEY, KEY + CHECK))) {
            throw new AEADBadTagException("wrong password");
        }
        return new Sealing(header.clone(), prefix, Arrays.copyOf(derived, KEY));
    }

    /** PBKDF2 with HMAC-SHA256. */
    static byte[] derive(char[] password, byte[] salt, int iterations, int length) throws GeneralSecurityException {
        char[] normal = Normalizer.normalize(java.nio.CharBuffer.wrap(password), Normalizer.Form.NFC)
                .toCharArray();
        PBEKeySpec spec = new PBEKeySpec(normal, salt, iterations, length * Byte.SIZE);
        try {
            return SecretKeyFactory.getInstance("PBKDF2WithHmacSHA256")
                    .generateSecret(spec)
                    .getEncoded();
        } finally {
            spec.clearPassword();
            Arrays.fill(normal, ' ');
        }
    }

    private static int crc(byte[] header) {
        CRC32 crc = new CRC32();
        crc.update(header, 0, CRC_AT);
        return (int) crc.getValue();
    }

    byte[] header() {
        return header.clone();
    }

    /** The next chunk, sealed: as long as the plain one and a tag. */
    byte[] seal(byte[] plain, boolean last) throws GeneralSecurityException {
        return next(Cipher.ENCRYPT_MODE, plain, last);
    }

    /**
     * The next chunk, opened.
     *
     * @throws AEADBadTagException when it is not what was sealed at this place
     */
    byte[] open(byte[] sealed, boolean last) throws GeneralSecurityException {
        if (sealed.length < TAG) {
            throw new AEADBadTagException("cut short");
        }
        return next(Cipher.DECRYPT_MODE, sealed, last);
    }

    private byte[] next(int mode, byte[] bytes, boolean last) throws GeneralSecurityException {
        byte[] nonce = ByteBuffer.allocate(PREFIX + Integer.BYTES)
                .put(prefix)
                .putInt(number)
                .array();
        number = Math.incrementExact(number);
        Cipher cipher = Cipher.getInstance("AES/GCM/NoPadding");
        cipher.init(mode, key, new GCMParameterSpec(TAG * Byte.SIZE, nonce));
        cipher.updateAAD(header);
        cipher.updateAAD(new byte[] {(byte) (last ? 1 : 0)});
        return cipher.doFinal(bytes);
    }
}
