package org.arcsay.audio;

/**
 * Little-endian integer PCM, one or two channels, and its conversion to 16-bit mono.
 *
 * @param sampleRate frames per second, 8000 to 48000
 * @param channels 1 or 2; two channels are averaged
 * @param bits bits per sample: 8 (unsigned), 16, 24 or 32 (signed)
 */
record PcmFormat(int sampleRate, int channels, int bits) {
    static final int LOWEST_RATE = 8_000;
    static final int HIGHEST_RATE = 48_000;

    int bytesPerSample() {
        return bits / 8;
    }

    int bytesPerFrame() {
        return bytesPerSample() * channels;
    }

    /** Converts {@code frames} whole frames from the start of {@code bytes}. */
    void toMono(byte[] bytes, int frames, short[] target) {
        for (int frame = 0; frame < frames; frame++) {
            int offset = frame * bytesPerFrame();
            int first = sample(bytes, offset);
            target[frame] = (short) (channels == 1 ? first : (first + sample(bytes, offset + bytesPerSample())) >> 1);
        }
    }

    private int sample(byte[] bytes, int offset) {
        if (bits == 8) {
            return (Byte.toUnsignedInt(bytes[offset]) - 128) << 8;
        }
        int top = offset + bytesPerSample() - 1;
        return bytes[top] << 8 | Byte.toUnsignedInt(bytes[top - 1]);
    }
}
