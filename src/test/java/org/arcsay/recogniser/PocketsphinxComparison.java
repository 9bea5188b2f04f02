package org.arcsay.recogniser;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.grammar.Tag;
import org.arcsay.grammar.WordGraph;

/**
 * Gives pocketsphinx the program's grammar and judges what it heard by the same meanings; for one thread. Not a test:
 * models/calibrate/pocketsphinx.py calls it. {@code graph FILE WEIGHT} writes the grammar as a Sphinx finite-state grammar, every
 * arc with the probability 1 ({@code even}) or one in the number of its state's arcs ({@code shared}); {@code judge FOLDER FILE...} reads the
 * folder's clips.tsv (file, voice, "in" or "out", words) and lists of hypotheses (file, words).
 */
final class PocketsphinxComparison {
    private final SpokenGrammar grammar = SpokenGrammar.standard();

    /** Numbers of in-grammar recordings by outcome, and of out-of-grammar ones taken for a sentence. */
    private static final class Counts {
        private int right;
        private int wrong;
        private int refused;
        private int accepted;
        private int outOfGrammar;

        @Override
        public String toString() {
            double all = (right + wrong + refused) / 100.0;
            return String.format(
                    Locale.ROOT,
                    "right %5.1f %%  wrong %5.1f %%  refused %5.1f %%  of %d | talk accepted %5.1f %% of %d",
                    right / all,
                    wrong / all,
                    refused / all,
                    right + wrong + refused,
                    outOfGrammar == 0 ? 0 : 100.0 * accepted / outOfGrammar,
                    outOfGrammar);
        }
    }

    public static void main(String[] arguments) throws IOException {
        PocketsphinxComparison comparison = new PocketsphinxComparison();
        if (arguments[0].equals("graph")) {
            comparison.writeGraph(Path.of(arguments[1]), arguments[2].equals("shared"));
            return;
        }
        for (String hypotheses : Arrays.asList(arguments).subList(2, arguments.length)) {
            System.out.println(hypotheses);
            comparison
                    .judge(Path.of(arguments[1]), Path.of(hypotheses))
                    .forEach((voice, counts) -> System.out.printf("  %-28s %s%n", voice, counts));
        }
    }

    private void writeGraph(Path file, boolean shared) throws IOException {
        WordGraph graph = grammar.graph();
        int end = graph.states().size();
        List<String> lines = new ArrayList<>(List.of(
                "FSG_BEGIN spoken", "NUM_STATES " + (end + 1), "START_STATE " + graph.start(), "FINAL_STATE " + end));
        for (int i = 0; i < end; i++) {
            lines.addAll(transitions(graph.states().get(i), i, end, shared));
        }
        lines.add("FSG_END");
        Files.write(file, lines);
    }

    private static List<String> transitions(WordGraph.State state, int from, int end, boolean shared) {
        int choices = state.arcs().size() + (state.accepting() ? 1 : 0);
        String probability = String.format(Locale.ROOT, "%.6f", shared ? 1.0 / choices : 1.0);
        List<String> lines = new ArrayList<>();
        state.arcs()
                .forEach((word, target) ->
                        lines.add("TRANSITION " + from + " " + target + " " + probability + " " + word));
        if (state.accepting()) {
            lines.add("TRANSITION " + from + " " + end + " " + probability);
        }
        return lines;
    }

    private Map<String, Counts> judge(Path folder, Path hypotheses) throws IOException {
        Map<String, String> heard = new LinkedHashMap<>();
        for (String line : Files.readAllLines(hypotheses)) {
            String[] fields = line.split("\t", 2);
            heard.put(fields[0], fields[1]);
        }
        Map<String, Counts> result = new LinkedHashMap<>();
        List<String> clips = Files.readAllLines(folder.resolve("clips.tsv"));
        for (String line : clips.subList(1, clips.size())) {
            String[] fields = line.split("\t");
            for (String group : List.of("all", fields[1])) {
                count(result.computeIfAbsent(group, g -> new Counts()), fields, heard.getOrDefault(fields[0], ""));
            }
        }
        return result;
    }

    private void count(Counts counts, String[] clip, String heard) {
        Set<List<Tag>> understood = meanings(heard);
        boolean refused = understood.isEmpty();
        if (clip[2].equals("out")) {
            counts.outOfGrammar++;
            counts.accepted += refused ? 0 : 1;
        } else if (refused) {
            counts.refused++;
        } else if (understood.equals(meanings(clip[3]))) {
            counts.right++;
        } else {
            counts.wrong++;
        }
    }

    private Set<List<Tag>> meanings(String words) {
        return grammar.meanings(Arrays.asList(words.split(" ")));
    }
}
