package org.arcsay.audio;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * The part of a RIFF/WAVE file before its samples, as described in "Multimedia Programming Interface and Data
 * Specifications 1.0" (IBM and Microsoft, 1991) and its later extension WAVE_FORMAT_EXTENSIBLE.
 *
 * @param format how the samples are stored
 * @param dataBytes length of the sample data, or {@link #UNKNOWN_LENGTH} where the writer left it open
 */
record WavHeader(PcmFormat format, long dataBytes) {
    static final long UNKNOWN_LENGTH = -1;

    private static final int PCM = 1;
    private static final int FLOAT = 3;
    private static final int EXTENSIBLE = 0xFFFE;
    private static final int SMALLEST_FORMAT_CHUNK = 16;
    private static final int LARGEST_FORMAT_CHUNK = 4096;
    private static final int SUBFORMAT_OFFSET = 24;
    private static final long OPEN_LENGTH = 0xFFFF_FFFFL;

    static WavHeader read(InputStream in, String name) throws IOException, AudioException {
        byte[] start = in.readNBytes(12);
        if (start.length == 0) {
            throw new AudioException(name + " is an empty file. Record it again, or choose another file.");
        }
        if (!isWave(start)) {
            throw new AudioException(name + " is not a WAV file; it looks like " + Containers.nameOf(start)
                    + ". Convert it to WAV (16-bit PCM, 16 kHz, mono) and try again.");
        }
        return readChunks(in, name);
    }

    private static boolean isWave(byte[] start) {
        return start.length == 12
                && ascii(start, 0).equals("RIFF")
                && ascii(start, 8).equals("WAVE");
    }

    private static WavHeader readChunks(InputStream in, String name) throws IOException, AudioException {
        PcmFormat format = null;
        while (true) {
            byte[] head = in.readNBytes(8);
            if (head.length < 8) {
                throw endsEarly(name);
            }
            long size = Integer.toUnsignedLong(
                    ByteBuffer.wrap(head).order(ByteOrder.LITTLE_ENDIAN).getInt(4));
            switch (ascii(head, 0)) {
                case "fmt " -> format = readFormat(in, size, name);
                case "data" -> {
                    if (format == null) {
                        throw new AudioException(name + " is damaged: its samples come before the description of"
                                + " their format. Save it again from the program that recorded it.");
                    }
                    return new WavHeader(format, size == 0 || size == OPEN_LENGTH ? UNKNOWN_LENGTH : size);
                }
                default -> in.skipNBytes(size + (size & 1));
            }
        }
    }

    private static PcmFormat readFormat(InputStream in, long size, String name) throws IOException, AudioException {
        if (size < SMALLEST_FORMAT_CHUNK || size > LARGEST_FORMAT_CHUNK) {
            throw new AudioException(name + " is damaged: its format description has an impossible length of " + size
                    + " bytes. Save it again from the program that recorded it.");
        }
        byte[] chunk = in.readNBytes((int) size);
        if (chunk.length < size) {
            throw endsEarly(name);
        }
        in.skipNBytes(size & 1);
        ByteBuffer fields = ByteBuffer.wrap(chunk).order(ByteOrder.LITTLE_ENDIAN);
        int code = Short.toUnsignedInt(fields.getShort(0));
        if (code == EXTENSIBLE && size >= SUBFORMAT_OFFSET + 2) {
            code = Short.toUnsignedInt(fields.getShort(SUBFORMAT_OFFSET));
        }
        requirePcm(code, name);
        return checked(
                new PcmFormat(fields.getInt(4), Short.toUnsignedInt(fields.getShort(2)), containerBits(fields, name)),
                name);
    }

    /** The width in which a sample is stored; the significant bits of 12- or 20-bit audio sit at its upper end. */
    private static int containerBits(ByteBuffer fields, String name) throws AudioException {
        int channels = Short.toUnsignedInt(fields.getShort(2));
        int blockAlign = Short.toUnsignedInt(fields.getShort(12));
        if (channels == 0 || blockAlign % channels != 0) {
            throw new AudioException(name + " is damaged: " + channels + " channels in frames of " + blockAlign
                    + " bytes. Save it again from the program that recorded it.");
        }
        return blockAlign / channels * 8;
    }

    private static void requirePcm(int code, String name) throws AudioException {
        if (code != PCM) {
            throw new AudioException(name + " holds " + (code == FLOAT ? "floating-point" : "compressed")
                    + " sound (WAV format code " + code
                    + "). Save it as plain PCM with 8, 16, 24 or 32 bits and try again.");
        }
    }

    private static PcmFormat checked(PcmFormat format, String name) throws AudioException {
        if (format.channels() > 2) {
            throw new AudioException(name + " has " + format.channels()
                    + " channels; only mono and stereo can be read. Mix it down to mono and try again.");
        }
        if (format.bits() < 8 || format.bits() > 32) {
            throw new AudioException(name + " has " + format.bits()
                    + " bits a sample; only 8, 16, 24 and 32 can be read. Save it with 16 bits and try again.");
        }
        if (format.sampleRate() < PcmFormat.LOWEST_RATE || format.sampleRate() > PcmFormat.HIGHEST_RATE) {
            throw new AudioException(name + " has a sample rate of " + format.sampleRate()
                    + " Hz; 8000 to 48000 Hz can be read. Save it at 16000 Hz and try again.");
        }
        return format;
    }

    static AudioException endsEarly(String name) {
        return new AudioException(name + " ends before its sound begins: the file is truncated."
                + " Copy it again from where it was recorded.");
    }

    private static String ascii(byte[] bytes, int offset) {
        return new String(Arrays.copyOfRange(bytes, offset, offset + 4), StandardCharsets.ISO_8859_1);
    }
}
