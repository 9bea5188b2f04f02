package org.arcsay.parser;

import java.util.List;

/**
 * What an utterance means, and what else the same sound could mean.
 *
 * @param command the likeliest meaning
 * @param others 0 to 1: how probable other meanings of the grammar are together, as far as the recogniser found them
 * @param outside 0 to 1: how probable it is that the sound is no sentence of the grammar; 0 where that is the likeliest meaning
 * @param rivals those other meanings of the grammar that are worth naming, the one first whose words are likeliest
 * @param signalToNoise by how many decibels it was spoken above the sound around it; infinite where that is not known
 */
public record Understood(Command command, double others, double outside, List<Command> rivals, double signalToNoise) {
    public Understood {
        rivals = List.copyOf(rivals);
    }
}
