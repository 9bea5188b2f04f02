package org.arcsay.review;

import java.util.Optional;
import org.arcsay.analysis.SeriesPlan;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Side;

/**
 * What is settled before a visit begins.
 *
 * @param patient whose visit it is
 * @param side the hand to begin with; empty to say it
 * @param plan the series that is wanted
 * @param microphone one of the names offered; empty for the system's choice
 */
public record MeasuringStart(PatientCode patient, Optional<Side> side, SeriesPlan plan, Optional<String> microphone) {}
