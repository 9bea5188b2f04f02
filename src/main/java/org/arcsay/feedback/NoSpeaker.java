package org.arcsay.feedback;

/** A speaker that is switched off. Any thread may use it. */
public final class NoSpeaker implements Speaker {
    @Override
    public void answer(Answer answer) {}

    @Override
    public void stop() {}

    @Override
    public boolean sounding() {
        return false;
    }

    @Override
    public void close() {}
}
