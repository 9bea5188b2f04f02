package org.arcsay.grammar;

import java.util.ArrayList;
import java.util.List;

/** Splits the text of a grammar into tokens. */
final class JsgfLexer {
    enum Kind {
        WORD,
        RULE,
        TAG,
        PUNCTUATION,
        DOC,
        END
    }

    record Lexeme(Kind kind, String text, int line) {
        boolean is(String punctuation) {
            return kind == Kind.PUNCTUATION && text.equals(punctuation);
        }
    }

    private final String text;
    private int at;
    private int line = 1;

    private JsgfLexer(String text) {
        this.text = text;
    }

    static List<Lexeme> split(String text) throws GrammarException {
        JsgfLexer lexer = new JsgfLexer(text);
        List<Lexeme> lexemes = new ArrayList<>();
        Lexeme next;
        do {
            next = lexer.next();
            lexemes.add(next);
        } while (next.kind() != Kind.END);
        return lexemes;
    }

    private Lexeme next() throws GrammarException {
        skipBlanksAndPlainComments();
        if (at >= text.length()) {
            return new Lexeme(Kind.END, "end of file", line);
        }
        if (text.startsWith("/**", at)) {
            return upTo("*/", 3, Kind.DOC);
        }
        char c = text.charAt(at);
        if (c == '<') {
            return upTo(">", 1, Kind.RULE);
        }
        if (c == '{') {
            return upTo("}", 1, Kind.TAG);
        }
        if ("=|()[];".indexOf(c) >= 0) {
            at++;
            return new Lexeme(Kind.PUNCTUATION, String.valueOf(c), line);
        }
        return word();
    }

    private void skipBlanksAndPlainComments() throws GrammarException {
        while (at < text.length()) {
            if (Character.isWhitespace(text.charAt(at))) {
                line += text.charAt(at++) == '\n' ? 1 : 0;
            } else if (text.startsWith("//", at)) {
                int end = text.indexOf('\n', at);
                at = end < 0 ? text.length() : end;
            } else if (text.startsWith("/*", at) && !text.startsWith("/**", at)) {
                upTo("*/", 2, Kind.DOC);
            } else {
                return;
            }
        }
    }

    private Lexeme upTo(String close, int open, Kind kind) throws GrammarException {
        int startLine = line;
        int end = text.indexOf(close, at + open);
        if (end < 0) {
            throw new GrammarException(
                    startLine, "'" + text.substring(at, at + open) + "' is never closed by '" + close + "'");
        }
        String inside = text.substring(at + open, end);
        line += (int) inside.chars().filter(c -> c == '\n').count();
        at = end + close.length();
        return new Lexeme(kind, inside, startLine);
    }

    private Lexeme word() throws GrammarException {
        int start = at;
        while (at < text.length() && isWordCharacter(text.charAt(at))) {
            at++;
        }
        if (at == start) {
            throw new GrammarException(line, "unexpected character '" + text.charAt(at) + "'");
        }
        return new Lexeme(Kind.WORD, text.substring(start, at), line);
    }

    private static boolean isWordCharacter(char c) {
        return Character.isLetterOrDigit(c) || c == '\'' || c == '-' || c == '.' || c == '#';
    }
}
