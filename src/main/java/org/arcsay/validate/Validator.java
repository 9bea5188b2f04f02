package org.arcsay.validate;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.arcsay.model.Entry;
import org.arcsay.model.Finding;
import org.arcsay.model.Reading;
import org.arcsay.model.Visit;

/**
 * Judges readings by named rules. It only ever answers with findings: no reading, entry or visit is changed.
 *
 * <p>Findings come most severe first, and in the order of the rules among equals.
 */
public final class Validator {
    private static final int REVISION = 2;

    private final List<Rule> rules;
    private final String version;

    Validator(List<Rule> rules, String tables) {
        this.rules = List.copyOf(rules);
        this.version = "rules-" + REVISION + "-" + checksum(rules, tables);
    }

    /** All rules with the tables shipped with the program. */
    public static Validator standard() {
        return with(RuleTables.shipped());
    }

    /** All rules with the tables of a clinic. */
    public static Validator with(RuleTables tables) {
        return new Validator(Rules.all(tables), tables.text());
    }

    /** Judges a reading that is not yet an entry against the entries of the visit that count and against earlier visits. */
    public List<Finding> judge(Reading candidate, Visit visit, History history) {
        return judge(Case.candidate(candidate, List.of(), visit, history));
    }

    /** As {@link #judge(Reading, Visit, History)}, for a reading that replaces an entry of the visit. */
    public List<Finding> judgeCorrection(Reading candidate, int replaced, Visit visit, History history) {
        return judge(Case.correcting(candidate, replaced, visit, history));
    }

    /** Judges an entry against all other counting entries of its visit, earlier and later ones. */
    public List<Finding> judgeEntry(Entry entry, Visit visit, History history) {
        return judge(Case.entry(entry, visit, history));
    }

    /** Judges every counting entry of a visit; entries without findings are in the map with an empty list. */
    public Map<Integer, List<Finding>> judgeAll(Visit visit, History history) {
        Map<Integer, List<Finding>> findings = new LinkedHashMap<>();
        visit.counting().forEach(entry -> findings.put(entry.number(), judgeEntry(entry, visit, history)));
        return findings;
    }

    /** The rules in the order in which they are asked. */
    public List<Rule> rules() {
        return rules;
    }

    /** Names this set of rules and tables, such as "rules-1-0123abcd"; any change of either gives another name. */
    public String version() {
        return version;
    }

    private List<Finding> judge(Case judged) {
        return rules.stream()
                .flatMap(rule -> rule.judge(judged).stream())
                .sorted(Comparator.comparing(Finding::severity).reversed())
                .toList();
    }

    private static String checksum(List<Rule> rules, String tables) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            rules.forEach(rule -> digest.update(rule.info().toString().getBytes(StandardCharsets.UTF_8)));
            digest.update(tables.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest.digest(), 0, 4);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java runtime has SHA-256", e);
        }
    }
}
