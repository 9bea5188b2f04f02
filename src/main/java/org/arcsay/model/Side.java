package org.arcsay.model;

/** The hand a reading belongs to. */
public enum Side {
    LEFT,
    RIGHT;

    public Side other() {
        return this == LEFT ? RIGHT : LEFT;
    }

    /** The plain word, as shown and spoken. */
    public String word() {
        return this == LEFT ? "left" : "right";
    }
}
