package org.arcsay.recogniser;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.arcsay.grammar.WordGraph;

/** A small grammar made by hand, for tests of the recogniser alone; for one thread. */
final class SpokenGrammar {
    private static final List<String> ONES = List.of(
            "zero",
            "one",
            "two",
            "three",
            "four",
            "five",
            "six",
            "seven",
            "eight",
            "nine",
            "ten",
            "eleven",
            "twelve",
            "thirteen",
            "fourteen",
            "fifteen",
            "sixteen",
            "seventeen",
            "eighteen",
            "nineteen");
    private static final List<String> TENS =
            List.of("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety");

    /** A state while building: states with the same future are the same. */
    private record Node(boolean accepting, TreeMap<String, Integer> arcs) {}

    private static final class Tree {
        private boolean accepting;
        private final TreeMap<String, Tree> next = new TreeMap<>();
    }

    private final Tree root = new Tree();

    /** The readings and commands that the recordings of the test resources hold, with all numbers to 120. */
    static WordGraph ofTheRecordings() {
        List<String> modes = List.of("", "active", "passive");
        List<String> degrees = List.of("", "degrees");
        List<String> numbers =
                IntStream.rangeClosed(0, 120).mapToObj(SpokenGrammar::number).toList();
        List<String> fingers = List.of("index", "middle", "ring", "little");
        return new SpokenGrammar()
                .add(
                        modes,
                        List.of("m p", "m c p", "i p", "thumb m p", "thumb i p", "interphalangeal"),
                        List.of("flexion", "hyperextension", "extension deficit", "extension lag"),
                        numbers,
                        degrees)
                .add(modes, List.of("", "c m c"), List.of("radial abduction", "palmar abduction"), numbers, degrees)
                .add(List.of("opposition"), fingers, List.of("touches"))
                .add(List.of("opposition"), fingers, numbers, List.of("millimeters"))
                .add(List.of("correction"), numbers)
                .add(List.of(
                        "disregard that",
                        "begin session",
                        "end session",
                        "right thumb active",
                        "left thumb active",
                        "left thumb",
                        "pain at end range"))
                .graph();
    }

    private static String number(int value) {
        if (value >= 100) {
            return ("one hundred " + (value == 100 ? "" : number(value - 100))).strip();
        }
        if (value < ONES.size()) {
            return ONES.get(value);
        }
        return (TENS.get(value / 10 - 2) + (value % 10 == 0 ? "" : " " + ONES.get(value % 10)));
    }

    /** Adds all sentences made of one choice from each part. */
    @SafeVarargs
    final SpokenGrammar add(List<String>... parts) {
        Stream<String> sentences = Stream.of("");
        for (List<String> part : parts) {
            sentences = sentences.flatMap(head -> part.stream().map(tail -> head + " " + tail));
        }
        sentences.forEach(this::addSentence);
        return this;
    }

    private void addSentence(String sentence) {
        Tree node = root;
        for (String word : sentence.strip().split("\\s+")) {
            node = node.next.computeIfAbsent(word, unused -> new Tree());
        }
        node.accepting = true;
    }

    WordGraph graph() {
        Map<Node, Integer> numbers = new HashMap<>();
        List<WordGraph.State> states = new ArrayList<>();
        int start = number(root, numbers, states);
        return new WordGraph(start, states);
    }

    private static int number(Tree tree, Map<Node, Integer> numbers, List<WordGraph.State> states) {
        TreeMap<String, Integer> arcs = new TreeMap<>();
        tree.next.forEach((word, next) -> arcs.put(word, number(next, numbers, states)));
        return numbers.computeIfAbsent(new Node(tree.accepting, arcs), node -> {
            states.add(new WordGraph.State(node.accepting(), node.arcs()));
            return states.size() - 1;
        });
    }
}
