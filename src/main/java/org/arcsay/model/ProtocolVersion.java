package org.arcsay.model;

import java.time.OffsetDateTime;

/**
 * What a patient's protocol said from a moment on.
 *
 * @param at when it was set
 * @param by role or initials of who set it, or empty
 * @param protocol what it says
 */
public record ProtocolVersion(OffsetDateTime at, String by, PatientProtocol protocol) {}
