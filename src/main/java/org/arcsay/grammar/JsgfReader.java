package org.arcsay.grammar;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.arcsay.grammar.Expansion.Choice;
import org.arcsay.grammar.Expansion.Meaning;
import org.arcsay.grammar.Expansion.Reference;
import org.arcsay.grammar.Expansion.Sequence;
import org.arcsay.grammar.Expansion.Token;
import org.arcsay.grammar.JsgfLexer.Kind;
import org.arcsay.grammar.JsgfLexer.Lexeme;

/**
 * Reads one file in the part of the JSpeech Grammar Format that we use: imports, rules, sequences, alternatives, groups,
 * optional parts, tags and documentation comments.
 */
final class JsgfReader {
    private final List<Lexeme> lexemes;
    private final Map<String, Expansion> rules = new LinkedHashMap<>();
    private final Map<String, String> docs = new LinkedHashMap<>();
    private final Map<String, Integer> firstUse = new LinkedHashMap<>();
    private final List<Import> imports = new ArrayList<>();
    private final List<String> publicRules = new ArrayList<>();
    private String name = "";
    private int at;

    private JsgfReader(List<Lexeme> lexemes) {
        this.lexemes = lexemes;
    }

    /**
     * One file by itself.
     *
     * @param name the full name of the grammar, or empty where the file gives none
     * @param imports in the order of the file
     * @param publicRules names of the public rules in the order of the file
     * @param rules every rule by its simple name
     * @param docs documentation comments by rule name
     * @param firstUse the line where a rule is first used, by the name used there
     */
    record GrammarFile(
            String name,
            List<Import> imports,
            List<String> publicRules,
            Map<String, Expansion> rules,
            Map<String, String> docs,
            Map<String, Integer> firstUse) {}

    /**
     * An import of a rule, or of all public rules where the rule is "*".
     *
     * @param grammar the full name of the other grammar
     */
    record Import(String grammar, String rule, int line) {
        static final String ALL = "*";
    }

    static GrammarFile read(String text) throws GrammarException {
        if (!text.startsWith("#JSGF")) {
            throw new GrammarException(1, "a grammar file begins with '#JSGF V1.0 UTF-8 en;'");
        }
        JsgfReader reader = new JsgfReader(JsgfLexer.split(text));
        reader.readFile();
        return new GrammarFile(
                reader.name, reader.imports, reader.publicRules, reader.rules, reader.docs, reader.firstUse);
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
                Lexeme rule = take();
                publicRules.add(rule.text());
                readRule(rule, doc);
                doc = "";
            } else {
                readStatement(next);
                doc = "";
            }
        }
    }

    private void readStatement(Lexeme first) throws GrammarException {
        switch (first.text()) {
            case "import" -> readImport();
            case "grammar" -> {
                name = peek().text();
                skipStatement(first);
            }
            default -> skipStatement(first);
        }
    }

    private void readImport() throws GrammarException {
        Lexeme rule = take();
        int dot = rule.text().lastIndexOf('.');
        if (rule.kind() != Kind.RULE || dot < 1) {
            throw new GrammarException(
                    rule.line(),
                    "expected an import such as 'import <arcsay.spoken.side>;' and found '" + rule.text() + "'");
        }
        imports.add(new Import(rule.text().substring(0, dot), rule.text().substring(dot + 1), rule.line()));
        expect(";");
    }

    private void skipStatement(Lexeme first) throws GrammarException {
        if (!List.of("#JSGF", "grammar").contains(first.text())) {
            throw new GrammarException(
                    first.line(), "expected a rule such as '<name> = …;' and found '" + first.text() + "'");
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
