package org.arcsay.grammar;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.arcsay.grammar.Expansion.Choice;
import org.arcsay.grammar.Expansion.Meaning;
import org.arcsay.grammar.Expansion.Reference;
import org.arcsay.grammar.Expansion.Sequence;
import org.arcsay.grammar.Expansion.Token;
import org.arcsay.grammar.JsgfLexer.Kind;
import org.arcsay.grammar.JsgfLexer.Lexeme;

/**
 * Reads the part of the JSpeech Grammar Format that we use: rules, sequences, alternatives, groups, optional parts, tags
 * and documentation comments. Rules may not call themselves, so that the language stays finite.
 */
final class JsgfReader {
    private final List<Lexeme> lexemes;
    private final Map<String, Expansion> rules = new LinkedHashMap<>();
    private final Map<String, String> docs = new LinkedHashMap<>();
    private final Map<String, Integer> firstUse = new LinkedHashMap<>();
    private String root = "";
    private int at;

    private JsgfReader(List<Lexeme> lexemes) {
        this.lexemes = lexemes;
    }

    /**
     * The rules of one file.
     *
     * @param root name of the public rule
     * @param rules every rule by name
     * @param docs documentation comments by rule name
     */
    record Rules(String root, Map<String, Expansion> rules, Map<String, String> docs) {}

    static Rules read(String text) throws GrammarException {
        if (!text.startsWith("#JSGF")) {
            throw new GrammarException(1, "a grammar file begins with '#JSGF V1.0 UTF-8 en;'");
        }
        JsgfReader reader = new JsgfReader(JsgfLexer.split(text));
        reader.readFile();
        return new Rules(reader.root, reader.rules, reader.docs);
    }

    private void readFile() throws GrammarException {
        String doc = "";
        while (peek().kind() != Kind.END) {
            Lexeme next = take();
            if (next.kind() == Kind.DOC) {
                doc = next.text();
            } else if (next.kind() == Kind.RULE) {
                readRule(next, doc);
                doc = "";
            } else if (next.kind() == Kind.WORD && next.text().equals("public")) {
                Lexeme name = take();
                root = name.text();
                readRule(name, doc);
            } else {
                skipStatement(next);
                doc = "";
            }
        }
        checkReferences();
        checkNoCycle(root, new ArrayList<>(), new HashSet<>());
    }

    private void skipStatement(Lexeme first) throws GrammarException {
        if (!List.of("#JSGF", "grammar", "import").contains(first.text())) {
            throw new GrammarException(first.line(), "expected a rule such as '<name> = …;' and found '" + first.text() + "'");
        }
        while (!take().is(";")) {
            if (peek().kind() == Kind.END) {
                throw new GrammarException(first.line(), "'" + first.text() + "' is not ended by ';'");
            }
        }
    }

    private void readRule(Lexeme name, String doc) throws GrammarException {
        expect("=");
        Expansion body = choice();
        expect(";");
        if (rules.put(name.text(), body) != null) {
            throw new GrammarException(name.line(), "rule <" + name.text() + "> is defined twice");
        }
        if (!doc.isBlank()) {
            docs.put(name.text(), doc);
        }
    }

    private Expansion choice() throws GrammarException {
        List<Expansion> options = new ArrayList<>(List.of(sequence()));
        while (peek().is("|")) {
            take();
            options.add(sequence());
        }
        return options.size() == 1 ? options.get(0) : new Choice(options);
    }

    private Expansion sequence() throws GrammarException {
        List<Expansion> parts = new ArrayList<>();
        while (!peek().is("|") && !peek().is(")") && !peek().is("]") && !peek().is(";")) {
            parts.add(part());
        }
        return parts.size() == 1 ? parts.get(0) : new Sequence(parts);
    }

    private Expansion part() throws GrammarException {
        Lexeme next = take();
        switch (next.kind()) {
            case WORD:
                return new Token(next.text());
            case RULE:
                firstUse.putIfAbsent(next.text(), next.line());
                return new Reference(next.text());
            case TAG:
                return meaning(next);
            default:
                return group(next);
        }
    }

    private static Meaning meaning(Lexeme next) throws GrammarException {
        try {
            return new Meaning(Tag.parse(next.text()));
        } catch (IllegalArgumentException e) {
            throw new GrammarException(next.line(), String.valueOf(e.getMessage()));
        }
    }

    private Expansion group(Lexeme open) throws GrammarException {
        if (open.is("(")) {
            Expansion inside = choice();
            expect(")");
            return inside;
        }
        if (open.is("[")) {
            Expansion inside = choice();
            expect("]");
            return Choice.optional(inside);
        }
        throw new GrammarException(open.line(), "unexpected '" + open.text() + "'");
    }

    private void checkReferences() throws GrammarException {
        if (!rules.containsKey(root)) {
            throw new GrammarException("grammar: no public rule, so nothing can be said");
        }
        for (Map.Entry<String, Integer> use : firstUse.entrySet()) {
            if (!rules.containsKey(use.getKey()) && !SpokenNumbers.RULES.containsKey(use.getKey())) {
                throw new GrammarException(use.getValue(), "rule <" + use.getKey() + "> is used and not defined");
            }
        }
    }

    private void checkNoCycle(String rule, List<String> path, Set<String> done) throws GrammarException {
        if (path.contains(rule)) {
            throw new GrammarException("grammar: rule <" + rule + "> calls itself through " + path);
        }
        if (!rules.containsKey(rule) || !done.add(rule)) {
            return;
        }
        path.add(rule);
        for (String used : references(rules.get(rule), new ArrayList<>())) {
            checkNoCycle(used, path, done);
        }
        path.remove(path.size() - 1);
    }

    private static List<String> references(Expansion expansion, List<String> found) {
        if (expansion instanceof Reference reference) {
            found.add(reference.rule());
        } else if (expansion instanceof Sequence sequence) {
            sequence.parts().forEach(part -> references(part, found));
        } else if (expansion instanceof Choice choice) {
            choice.options().forEach(option -> references(option, found));
        }
        return found;
    }

    private Lexeme peek() {
        return lexemes.get(at);
    }

    private Lexeme take() {
        return lexemes.get(at == lexemes.size() - 1 ? at : at++);
    }

    private void expect(String punctuation) throws GrammarException {
        Lexeme next = take();
        if (!next.is(punctuation)) {
            throw new GrammarException(next.line(), "expected '" + punctuation + "' and found '" + next.text() + "'");
        }
    }
}
