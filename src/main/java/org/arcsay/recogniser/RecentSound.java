package org.arcsay.recogniser;

/** The last moments of a stream of frames; for one thread. */
final class RecentSound {
    private final short[] ring;
    private long total;

    RecentSound(int frames) {
        ring = new short[frames];
    }

    void add(short[] samples, int length) {
        for (int i = Math.max(0, length - ring.length); i < length; i++) {
            ring[(int) ((total + i) % ring.length)] = samples[i];
        }
        total += length;
    }

    /** All frames ever added. */
    long total() {
        return total;
    }

    /** The frames from a position in the whole stream on, or as many of them as are still here. */
    short[] since(long position) {
        long from = Math.max(Math.max(0, position), total - ring.length);
        short[] samples = new short[(int) Math.max(0, total - from)];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = ring[(int) ((from + i) % ring.length)];
        }
        return samples;
    }
}
