package org.arcsay.review;

/** What the measuring screen asks for. Called by the thread of the screen; to be handed on and not waited for. */
public interface MeasuringActions {
    /**
     * The same as if these words had been spoken.
     *
     * @param words lower or upper case, with numbers as words or digits, such as "ip flexion 75"; never blank
     */
    void say(String words);

    /** Opens the review of this visit, once the session has ended. */
    ReviewModel review() throws HomeException;

    /** What is always to be shown beside the visit, such as that it is no real one; may be empty. */
    default String remark() {
        return "";
    }

    /** The window was closed; what was stored stays stored. */
    void closed();
}
