package org.arcsay.store;

import java.util.Arrays;
import java.util.Random;

/** Spoils bytes in the ways in which disks, transfers and hands spoil them. */
public final class Mutation {
    private static final byte[] TELLING = {0, 1, 0x7f, (byte) 0x80, (byte) 0xff, '\n', '"', ';', '\'', '<', '0', '9'};

    private Mutation() {}

    /** A copy with 1 to 4 changes. */
    public static byte[] of(byte[] whole, Random random) {
        byte[] bytes = whole.clone();
        for (int change = random.nextInt(4); change >= 0; change--) {
            bytes = bytes.length == 0 ? new byte[] {1} : once(bytes, random);
        }
        return bytes;
    }

    private static byte[] once(byte[] bytes, Random random) {
        int at = random.nextInt(bytes.length);
        int length = 1 + random.nextInt(Math.min(64, bytes.length - at));
        switch (random.nextInt(7)) {
            case 0 -> bytes[at] ^= (byte) (1 << random.nextInt(8));
            case 1 -> bytes[at] = TELLING[random.nextInt(TELLING.length)];
            case 2 -> Arrays.fill(bytes, at, at + length, (byte) 0);
            case 3 -> System.arraycopy(bytes, random.nextInt(bytes.length - length + 1), bytes, at, length);
            case 4 -> {
                return Arrays.copyOf(bytes, at);
            }
            case 5 -> {
                return join(Arrays.copyOf(bytes, at), Arrays.copyOfRange(bytes, at + length, bytes.length));
            }
            default -> {
                byte[] inserted = new byte[length];
                random.nextBytes(inserted);
                return join(join(Arrays.copyOf(bytes, at), inserted), Arrays.copyOfRange(bytes, at, bytes.length));
            }
        }
        return bytes;
    }

    private static byte[] join(byte[] first, byte[] second) {
        byte[] both = Arrays.copyOf(first, first.length + second.length);
        System.arraycopy(second, 0, both, first.length, second.length);
        return both;
    }
}
