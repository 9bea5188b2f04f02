package org.arcsay.audio;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/**
 * What can be said about a whole recording from its level alone. Limits are our own defaults.
 *
 * @param length of what was measured
 * @param peak largest magnitude, 0 to 1
 * @param clippedShare share of the frames at full scale, 0 to 1
 * @param longestDigitalSilence longest run of frames that are exactly zero
 */
public record AudioQuality(Duration length, double peak, double clippedShare, Duration longestDigitalSilence) {
    /** No speech survives below this peak (-54 dB of full scale). */
    static final double TOO_QUIET = 0.002;

    /** Above this share, clipping is heard in every loud vowel. */
    static final double TOO_CLIPPED = 0.001;

    /** A level worth telling the user about. */
    public enum Warning {
        SILENT("The recording is completely silent. Check that the microphone is switched on and allowed."),
        TOO_QUIET("The recording is too quiet to be understood. Move the microphone closer or raise its level."),
        CLIPPED("The recording is too loud and distorted. Lower the microphone level or move it away; check values.");

        private final String sentence;

        Warning(String sentence) {
            this.sentence = sentence;
        }

        /** What it means and what to do, for the user. */
        public String sentence() {
            return sentence;
        }
    }

    public List<Warning> warnings() {
        List<Warning> warnings = new ArrayList<>();
        if (peak == 0) {
            warnings.add(Warning.SILENT);
        } else if (peak < TOO_QUIET) {
            warnings.add(Warning.TOO_QUIET);
        }
        if (clippedShare > TOO_CLIPPED) {
            warnings.add(Warning.CLIPPED);
        }
        return List.copyOf(warnings);
    }
}
