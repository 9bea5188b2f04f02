package org.arcsay.parser;

import java.util.List;

/**
 * What an utterance means, and what else the same sound could mean.
 *
 * @param command the likeliest meaning
 * @param certainty 0 to 1: how probable that meaning is beside all others that the recogniser found
 * @param rivals other meanings, likeliest first; a rejection among them stands for all sound outside the grammar
 * @param signalToNoise by how many decibels it was spoken above the sound around it; infinite where that is not known
 */
public record Understood(Command command, double certainty, List<Command> rivals, double signalToNoise) {
    public Understood {
        rivals = List.copyOf(rivals);
    }
}
