package org.arcsay.parser;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.Utterance;
import org.arcsay.model.Utterance.Rival;
import org.arcsay.model.Word;
import org.arcsay.parser.Command.Dictated;
import org.jspecify.annotations.Nullable;

/**
 * Sees when a pause cut a sentence in two; used by the thread that recognises. See docs/decisions/0012-joined-sentences.md.
 *
 * <p>A piece goes on with what was said before it when it begins soon after, is a fragment on its own, and makes one sentence
 * with it.
 */
public final class Joining {
    /** From the end of one word to the beginning of the next, as the recogniser marks them. */
    public static final Duration SOON = Duration.ofMillis(1200);

    /** A shorter time for what would mean something else on its own. */
    static final Duration AT_ONCE = Duration.ofMillis(800);

    private static final double NEGLIGIBLE = 0.002;

    private final Parser parser;
    private @Nullable Utterance before;
    private @Nullable Understood meaningBefore;

    public Joining(Parser parser) {
        this.parser = parser;
    }

    /** How a piece belongs to what was said before it. */
    public enum Link {
        /** Not at all. */
        NONE,
        /** Both are one sentence. */
        WHOLE,
        /** Both are the beginning of a sentence, which may go on. */
        UNFINISHED,
        /** It makes no sentence, and came so soon that it may have belonged to the reading before it. */
        UNCLEAR;

        boolean isJoined() {
            return this == WHOLE || this == UNFINISHED;
        }
    }

    /**
     * A piece seen beside what was said before it.
     *
     * @param utterance the whole sentence, as far as it is known
     * @param meaning of that utterance; where the link is unclear, of both pieces together
     */
    public record Said(Utterance utterance, Understood meaning, Link link) {}

    /** Takes the next piece; empty where it is no more than breath: hardly a word, and not the rest of a sentence. */
    public Optional<Said> next(Utterance piece) {
        Understood alone = parser.understand(piece);
        Said said = before == null ? alone(piece, alone) : beside(before, piece, alone);
        if (piece.isBreath() && !said.link().isJoined()) {
            return Optional.empty();
        }
        before = said.utterance();
        if (said.link() != Link.UNFINISHED) {
            meaningBefore = said.meaning();
        }
        return Optional.of(said);
    }

    /** Takes what is whole by itself, such as typed words; what is said next begins anew. */
    public Said whole(Utterance utterance) {
        forget();
        return alone(utterance, parser.understand(utterance));
    }

    /** What is said next begins anew. */
    public void forget() {
        before = null;
        meaningBefore = null;
    }

    private static Said alone(Utterance piece, Understood meaning) {
        return new Said(piece, meaning, Link.NONE);
    }

    private Said beside(Utterance first, Utterance piece, Understood alone) {
        Duration pause = piece.start().minus(first.end());
        if (pause.compareTo(SOON) > 0 || !(isFragment(alone.command()) || meantNothing(first))) {
            return pause.compareTo(AT_ONCE) > 0 ? alone(piece, alone) : modeAfter(first, piece, alone);
        }
        Utterance whole = joined(first, piece);
        Understood meaning = parser.understand(whole);
        if (!(meaning.command() instanceof Command.Rejected)) {
            return new Said(whole, atLeastAsSure(meaning), Link.WHOLE);
        }
        if (parser.isBeginning(whole)) {
            return new Said(whole, alone, Link.UNFINISHED);
        }
        boolean talk = alone.command() instanceof Command.Rejected && pause.compareTo(AT_ONCE) > 0;
        return !talk && givesReading(meaningBefore)
                ? new Said(piece, meaning, Link.UNCLEAR)
                : new Said(piece, alone, Link.NONE);
    }

    /** Such as "passive thumb", cut off by a pause: alone, the reading after it would be taken as active. */
    private boolean meantNothing(Utterance first) {
        return meaningBefore != null
                && meaningBefore.command() instanceof Command.Rejected
                && parser.isBeginning(first);
    }

    /** A piece that adds nothing, such as "degrees", adds no doubt either. */
    private Understood atLeastAsSure(Understood whole) {
        return meaningBefore != null && meaningBefore.command().equals(whole.command()) ? meaningBefore : whole;
    }

    /** It means nothing on its own, or only as the answer to a question. */
    private static boolean isFragment(Command command) {
        return command instanceof Command.Rejected
                || command instanceof Command.KindNamed
                || (command instanceof Command.Number number && !number.correction())
                || (command instanceof Command.Arc arc && !arc.correction());
    }

    private static boolean givesReading(@Nullable Understood said) {
        Command command = said == null ? null : said.command();
        return command instanceof Dictated || command instanceof Command.Number || command instanceof Command.Arc;
    }

    /** Active, passive or a placement right after a reading that named none belongs to that reading, and holds from then on. */
    private Said modeAfter(Utterance first, Utterance piece, Understood alone) {
        if (alone.command() instanceof Command.SetContext set
                && set.who().side().isEmpty()
                && meaningBefore != null
                && meaningBefore.command() instanceof Dictated reading
                && !reading.correction()
                && isNew(set.who().mode(), reading.who().mode())
                && isNew(set.who().placement(), reading.who().placement())) {
            Who who = new Who(
                    reading.who().side(),
                    reading.who().mode().or(set.who()::mode),
                    reading.who().placement().or(set.who()::placement));
            Utterance whole = joined(first, piece);
            Understood meaning = new Understood(
                    new Dictated(who, reading.readings(), false),
                    alone.others(),
                    alone.outside(),
                    List.of(),
                    whole.signalToNoise());
            return new Said(whole, meaning, Link.WHOLE);
        }
        return alone(piece, alone);
    }

    private static <T> boolean isNew(Optional<T> said, Optional<T> before) {
        return said.isEmpty() || before.isEmpty();
    }

    private static Utterance joined(Utterance first, Utterance second) {
        List<Word> words = new ArrayList<>(first.words());
        words.addAll(second.words());
        List<Rival> rivals = new ArrayList<>();
        List<Rival> endings = ways(second);
        for (Rival beginning : ways(first)) {
            for (Rival ending : endings) {
                rivals.add(new Rival(
                        (beginning.text() + " " + ending.text()).strip(),
                        beginning.probability() * ending.probability()));
            }
        }
        rivals.remove(0);
        rivals.removeIf(rival -> rival.probability() < NEGLIGIBLE);
        rivals.sort(Comparator.comparingDouble(Rival::probability).reversed());
        return new Utterance(words, rivals, Math.min(first.signalToNoise(), second.signalToNoise()));
    }

    /** All ways of hearing an utterance, beginning with the words themselves. */
    private static List<Rival> ways(Utterance utterance) {
        List<Rival> ways = new ArrayList<>(utterance.rivals());
        ways.add(0, new Rival(utterance.text(), utterance.probability()));
        return ways;
    }
}
