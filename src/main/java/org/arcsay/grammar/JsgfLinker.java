package org.arcsay.grammar;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.arcsay.grammar.Expansion.Choice;
import org.arcsay.grammar.Expansion.Reference;
import org.arcsay.grammar.Expansion.Sequence;
import org.arcsay.grammar.JsgfReader.GrammarFile;
import org.arcsay.grammar.JsgfReader.Import;

/**
 * Joins a grammar file and the ones it imports; used once, by one thread. Rules may not call themselves, so that the language
 * stays finite, and only public rules can be imported, as the format has it.
 */
final class JsgfLinker {
    private static final String NUMBERS = "numbers";

    private final GrammarLibrary library;
    private final Map<String, Expansion> rules = new LinkedHashMap<>();
    private final Map<String, String> docs = new LinkedHashMap<>();
    private final Map<String, GrammarFile> imported = new HashMap<>();
    private final List<String> texts = new ArrayList<>();

    private JsgfLinker(GrammarLibrary library) {
        this.library = library;
    }

    /**
     * The rules of a grammar and of all that it imports.
     *
     * @param root name of the rule that is listened for: the first public one
     * @param rules every rule by name; those of imported grammars by their full names
     * @param docs documentation comments by rule name, of rules that can be said; imported ones first
     * @param texts the texts that the rules come from
     */
    record Rules(String root, Map<String, Expansion> rules, Map<String, String> docs, List<String> texts) {}

    static Rules link(String text, GrammarLibrary library) throws GrammarException {
        GrammarFile file = JsgfReader.read(text);
        if (file.publicRules().isEmpty()) {
            throw new GrammarException("grammar: no public rule, so nothing can be said");
        }
        JsgfLinker linker = new JsgfLinker(library);
        linker.add(file, text, "", List.of(file.name()));
        String root = file.publicRules().get(0);
        Set<String> used = new HashSet<>();
        linker.checkNoCycle(root, new ArrayList<>(), used);
        linker.docs.keySet().retainAll(used);
        return new Rules(root, linker.rules, linker.docs, linker.texts);
    }

    private void add(GrammarFile file, String text, String prefix, List<String> path) throws GrammarException {
        Map<String, String> names = new HashMap<>();
        for (Import wanted : file.imports()) {
            names(wanted, path).forEach(names::put);
        }
        file.rules().keySet().forEach(rule -> names.put(rule, prefix + rule));
        for (Map.Entry<String, Integer> use : file.firstUse().entrySet()) {
            if (!names.containsKey(use.getKey()) && !SpokenNumbers.RULES.containsKey(use.getKey())) {
                throw new GrammarException(use.getValue(), "rule <" + use.getKey() + "> is used and not defined");
            }
        }
        file.rules().forEach((rule, body) -> rules.put(prefix + rule, renamed(body, names)));
        file.docs().forEach((rule, doc) -> docs.put(prefix + rule, doc));
        texts.add(text);
    }

    /** The names by which an import can be called, each with the name of the rule that it stands for. */
    private Map<String, String> names(Import wanted, List<String> path) throws GrammarException {
        Map<String, String> names = new HashMap<>();
        for (String rule : wantedRules(wanted, path)) {
            String full = wanted.grammar() + "." + rule;
            names.put(full, full);
            names.put(rule, full);
        }
        return names;
    }

    private List<String> wantedRules(Import wanted, List<String> path) throws GrammarException {
        List<String> offered = wanted.grammar().equals(NUMBERS)
                ? SpokenNumbers.RULES.keySet().stream()
                        .map(name -> name.substring(NUMBERS.length() + 1))
                        .toList()
                : grammar(wanted, path).publicRules();
        if (wanted.rule().equals(Import.ALL)) {
            return offered;
        }
        if (!offered.contains(wanted.rule())) {
            throw new GrammarException(
                    wanted.line(),
                    "<" + wanted.grammar() + "." + wanted.rule() + "> cannot be imported: grammar " + wanted.grammar()
                            + " has no public rule <" + wanted.rule() + ">");
        }
        return List.of(wanted.rule());
    }

    private GrammarFile grammar(Import wanted, List<String> path) throws GrammarException {
        String name = wanted.grammar();
        GrammarFile known = imported.get(name);
        if (known != null) {
            return known;
        }
        if (path.contains(name)) {
            throw new GrammarException(wanted.line(), "grammar " + name + " imports itself through " + path);
        }
        Optional<String> text = library.text(name);
        if (text.isEmpty()) {
            throw new GrammarException(
                    wanted.line(), "there is no grammar " + name + "; put its file beside this one or mend the import");
        }
        try {
            GrammarFile file = JsgfReader.read(text.get());
            if (!file.name().equals(name)) {
                throw new GrammarException("grammar: calls itself '" + file.name() + "' and not '" + name + "'");
            }
            List<String> longer = new ArrayList<>(path);
            longer.add(name);
            add(file, text.get(), name + ".", longer);
            imported.put(name, file);
            return file;
        } catch (GrammarException e) {
            throw new GrammarException("in the imported grammar " + name + ": " + e.getMessage());
        }
    }

    private static Expansion renamed(Expansion expansion, Map<String, String> names) {
        if (expansion instanceof Reference reference) {
            return new Reference(names.getOrDefault(reference.rule(), reference.rule()));
        }
        if (expansion instanceof Sequence sequence) {
            return new Sequence(
                    sequence.parts().stream().map(part -> renamed(part, names)).toList());
        }
        if (expansion instanceof Choice choice) {
            return new Choice(choice.options().stream()
                    .map(option -> renamed(option, names))
                    .toList());
        }
        return expansion;
    }

    private void checkNoCycle(String rule, List<String> path, Set<String> done) throws GrammarException {
        if (path.contains(rule)) {
            throw new GrammarException("grammar: rule <" + rule + "> calls itself through " + path);
        }
        Expansion body = rules.get(rule);
        if (body == null || !done.add(rule)) {
            return;
        }
        path.add(rule);
        for (String used : references(body, new ArrayList<>())) {
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
}
