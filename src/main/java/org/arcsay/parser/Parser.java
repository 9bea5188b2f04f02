package org.arcsay.parser;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.arcsay.grammar.Lexicon;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.grammar.Tag;
import org.arcsay.model.Utterance;
import org.arcsay.model.Word;
import org.arcsay.parser.Command.Reason;
import org.arcsay.parser.Command.Rejected;

/** Words to commands. Whatever is not exactly one sentence of the grammar is rejected. Any thread may use it. */
public final class Parser {
    /** The least probability of a meaning that is offered instead of another, or remembered as perhaps meant. */
    private static final double WORTH_NAMING = 0.04;

    private final SpokenGrammar grammar;
    private final Lexicon lexicon;

    public Parser(SpokenGrammar grammar) {
        this.grammar = grammar;
        this.lexicon = Lexicon.standard().with(grammar.ownWords());
    }

    public SpokenGrammar grammar() {
        return grammar;
    }

    public Command parse(Utterance utterance) {
        return parse(texts(utterance));
    }

    /** The meaning of an utterance beside the meanings of its rivals; all that is rejected counts as one meaning. */
    public Understood understand(Utterance utterance) {
        Command command = parse(utterance);
        Map<Command, Double> shares = new LinkedHashMap<>();
        Map<List<String>, Double> rejected = new LinkedHashMap<>(Map.of(texts(utterance), 0.0));
        for (Utterance.Rival rival : utterance.rivals()) {
            List<String> words = List.of(rival.text().split(" "));
            Command other = parse(words);
            if (!(other instanceof Rejected)) {
                shares.merge(other, rival.probability(), Double::sum);
            } else if (!(command instanceof Rejected)) {
                rejected.merge(words, rival.probability(), Double::sum);
            }
        }
        shares.remove(command);
        double others = shares.values().stream().mapToDouble(share -> share).sum();
        List<Command> rivals = shares.entrySet().stream()
                .filter(share -> share.getValue() >= WORTH_NAMING)
                .map(Map.Entry::getKey)
                .toList();
        return new Understood(command, others, outside(rejected), rivals, utterance.signalToNoise());
    }

    /**
     * How probable rejected rivals are together. A rival that says nothing by its sound does not count: all its pronunciations are also
     * those of what was heard, or of another rival, which counts.
     *
     * @param shares what was heard, with no share, and then the rivals
     */
    private double outside(Map<List<String>, Double> shares) {
        List<List<String>> texts = List.copyOf(shares.keySet());
        return IntStream.range(0, texts.size())
                .filter(place -> !isRepetition(place, texts))
                .mapToDouble(place -> shares.getOrDefault(texts.get(place), 0.0))
                .sum();
    }

    private boolean isRepetition(int place, List<List<String>> texts) {
        List<String> text = texts.get(place);
        return IntStream.range(0, texts.size())
                .filter(other -> other != place && lexicon.covers(texts.get(other), text))
                .anyMatch(other -> other < place || !lexicon.covers(text, texts.get(other)));
    }

    /** Whether some sentence begins with the words of an utterance. */
    boolean isBeginning(Utterance utterance) {
        return grammar.isBeginning(texts(utterance));
    }

    private static List<String> texts(Utterance utterance) {
        return utterance.words().stream().map(Word::text).toList();
    }

    /** The one meaning of these words, or a rejection that says why there is none. */
    public Command parse(List<String> words) {
        if (words.contains(Word.UNKNOWN)) {
            return new Rejected(Reason.UNKNOWN_WORDS, "Part of it was not understood.");
        }
        Set<List<Tag>> meanings = grammar.meanings(words);
        if (meanings.isEmpty()) {
            return new Rejected(Reason.NOT_A_PHRASE, "'" + String.join(" ", words) + "' is not a phrase I know.");
        }
        try {
            Set<Command> commands = new LinkedHashSet<>();
            meanings.forEach(meaning -> commands.add(Interpreter.interpret(meaning)));
            return commands.size() == 1
                    ? commands.iterator().next()
                    : new Rejected(Reason.TWO_MEANINGS, "'" + String.join(" ", words) + "' has two meanings.");
        } catch (IllegalArgumentException | ArithmeticException e) {
            return new Rejected(Reason.IMPOSSIBLE_NUMBER, "That cannot be: " + e.getMessage() + ".");
        }
    }
}
