package org.arcsay.app;

import org.arcsay.audio.CaptureStatus;
import org.arcsay.audio.Level;
import org.arcsay.review.MeasuringState.Loudness;

/** How a microphone is doing, for a screen. */
final class Notices {
    private Notices() {}

    /** What to tell, or empty when all is well. */
    static String of(CaptureStatus.State state) {
        return switch (state) {
            case NO_SIGNAL, DEVICE_LOST -> state.sentence();
            case LISTENING, ENDED -> "";
        };
    }

    static Loudness loudness(Level level) {
        return Loudness.ofRms(level.rms(), level.clippedShare() > 0);
    }
}
