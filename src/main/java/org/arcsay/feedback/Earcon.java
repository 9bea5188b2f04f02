package org.arcsay.feedback;

import java.util.List;

/**
 * The six short sounds that tell a therapist what happened without a look at the screen.
 *
 * <p>They differ in number of notes, in which note is long, and in direction, so that a person who cannot tell pitches apart
 * still tells them apart. Every one is shorter than 300 ms, peaks at -12 dBFS and begins and ends without a click.
 */
public enum Earcon {
    /** One long rising glide: listening. */
    LISTENING(Note.glide(0, 200, 440, 740)),
    /** Short, then long and higher: understood and saved. */
    SAVED(Note.tone(0, 36, 660), Note.tone(50, 85, 990)),
    /** Three equal notes, up and back down: understood but doubtful, a question follows. */
    DOUBTFUL(Note.tone(0, 60, 590), Note.tone(90, 60, 790), Note.tone(180, 60, 590)),
    /** Two equal long notes, the second lower: refused, nothing was saved. */
    REFUSED(Note.tone(0, 110, 370), Note.tone(145, 110, 277)),
    /** Four quick notes running down: taken back. */
    UNDONE(Note.tone(0, 40, 990), Note.tone(65, 40, 830), Note.tone(130, 40, 700), Note.tone(195, 40, 590)),
    /** Long, then short and lower: paused. */
    PAUSED(Note.tone(0, 140, 590), Note.tone(175, 50, 395));

    private final List<Note> notes;
    private final Sound sound;

    Earcon(Note... notes) {
        this.notes = List.of(notes);
        this.sound = Tones.render(this.notes);
    }

    /** The notes it is made of, in order of time. */
    public List<Note> notes() {
        return notes;
    }

    public Sound sound() {
        return sound;
    }

    /**
     * One note.
     *
     * @param start milliseconds from the beginning of the sound
     * @param length milliseconds, fades included
     * @param from pitch at its beginning in hertz
     * @param to pitch at its end in hertz
     */
    public record Note(int start, int length, double from, double to) {
        static Note tone(int start, int length, double pitch) {
            return new Note(start, length, pitch, pitch);
        }

        static Note glide(int start, int length, double from, double to) {
            return new Note(start, length, from, to);
        }
    }
}
