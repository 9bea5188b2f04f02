package org.arcsay.model;

/** Whether the patient moved the joint (active) or the examiner did (passive). */
public enum Mode {
    ACTIVE,
    PASSIVE;

    public String word() {
        return this == ACTIVE ? "active" : "passive";
    }
}
