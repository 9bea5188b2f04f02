package org.arcsay.app;

import java.util.Locale;
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

    /** As above, and whether sound was lost. */
    static String of(CaptureStatus status) {
        String trouble = of(status.state());
        return !trouble.isEmpty() || status.lost().isZero()
                ? trouble
                : String.format(
                        Locale.ROOT,
                        "%.1f seconds of sound were lost because this computer is too busy. Say again what was not answered.",
                        status.lost().toMillis() / 1000.0);
    }

    static Loudness loudness(Level level) {
        return Loudness.ofRms(level.rms(), level.clippedShare() > 0);
    }
}
