package org.arcsay.model;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.arcsay.model.PatientProtocol.RangeLimit;
import org.arcsay.model.Value.ExtensionKind;

/** Reads what {@link PatientProtocol#statements} writes, and shorter ways to write the same. */
final class ProtocolStatements {
    private static final String HOW =
            " Write for example: involved right; no passive; no resisted; IP flexion at most 40; passive IP flexion at most"
                    + " 30; IP extension lacks at least 20; MP extension not beyond neutral; MP extension hyperextends at most"
                    + " 10.";
    private static final Pattern INVOLVED = Pattern.compile("involved(?: hand)?:? (left|right)(?: hand)?");
    private static final Pattern NO_MODE = Pattern.compile(
            "no (passive|resisted)(?: motion)?|(passive|resisted)(?: motion)? (?:is )?not (?:permitted|allowed)");
    private static final String DEGREES = "(\\d{1,3}(?:\\.\\d{1,2})?)(?: ?(?:degrees|degree|deg))?";
    private static final Pattern AT_MOST = Pattern.compile("(.+?) (?:at most|up to|max) " + DEGREES);
    private static final Pattern LACKS = Pattern.compile("(.+? extension) lacks at least " + DEGREES);
    private static final Pattern NEUTRAL =
            Pattern.compile("(.+? extension) (?:not beyond neutral|at most to neutral|up to neutral)");
    private static final Pattern HYPER = Pattern.compile("(.+? extension) hyperextends at most " + DEGREES);

    private ProtocolStatements() {}

    static PatientProtocol read(String text) {
        PatientProtocol protocol = PatientProtocol.none();
        for (String part : text.split("[;,\\n\\r]+")) {
            String statement = part.toLowerCase(Locale.ROOT)
                    .replace("\u00b0", " degrees")
                    .replaceAll("\\s+", " ")
                    .strip();
            if (!statement.isEmpty()) {
                protocol = with(protocol, statement);
            }
        }
        return protocol;
    }

    private static PatientProtocol with(PatientProtocol protocol, String statement) {
        Matcher involved = INVOLVED.matcher(statement);
        if (involved.matches()) {
            Side side = involved.group(1).equals("left") ? Side.LEFT : Side.RIGHT;
            if (protocol.involvedSide().filter(other -> other != side).isPresent()) {
                throw new IllegalArgumentException(
                        "both hands are named as involved; leave it out where both are under treatment." + HOW);
            }
            return protocol.involving(side);
        }
        Matcher no = NO_MODE.matcher(statement);
        if (no.matches()) {
            return "passive".equals(no.group(1)) || "passive".equals(no.group(2))
                    ? protocol.withoutPassive()
                    : protocol.withoutResisted();
        }
        RangeLimit limit = limit(statement).orElseThrow(() -> notUnderstood(statement));
        if (protocol.ranges().stream()
                .anyMatch(other -> other.measure().equals(limit.measure())
                        && other.mode().equals(limit.mode())
                        && !other.equals(limit)
                        && other.furthest().getClass() == limit.furthest().getClass())) {
            throw new IllegalArgumentException(
                    "two limits are given for " + limit.measure().words() + "; keep one." + HOW);
        }
        return protocol.ranges().contains(limit) ? protocol : protocol.limiting(limit);
    }

    private static Optional<RangeLimit> limit(String statement) {
        Matcher lacks = LACKS.matcher(statement);
        if (lacks.matches()) {
            return limit(lacks.group(1), extension(ExtensionKind.DEFICIT, lacks.group(2)));
        }
        Matcher neutral = NEUTRAL.matcher(statement);
        if (neutral.matches()) {
            return limit(neutral.group(1), Value.Extension.neutral());
        }
        Matcher hyper = HYPER.matcher(statement);
        if (hyper.matches()) {
            return limit(hyper.group(1), extension(ExtensionKind.HYPEREXTENSION, hyper.group(2)));
        }
        Matcher most = AT_MOST.matcher(statement);
        return most.matches() ? limit(most.group(1), Value.Angle.of(most.group(2))) : Optional.empty();
    }

    private static Value extension(ExtensionKind kind, String degrees) {
        return new Value.Extension(kind, new BigDecimal(degrees));
    }

    private static Optional<RangeLimit> limit(String subject, Value furthest) {
        Optional<Mode> mode = Arrays.stream(Mode.values())
                .filter(m -> subject.startsWith(m.word() + " "))
                .findFirst();
        String words = mode.map(m -> subject.substring(m.word().length() + 1)).orElse(subject);
        return measure(words).map(measure -> {
            requireDirection(measure, furthest);
            return new RangeLimit(measure, mode, furthest);
        });
    }

    /** "IP extension at most 20" could mean either side of neutral. */
    private static void requireDirection(Measure measure, Value furthest) {
        if (furthest instanceof Value.Angle angle
                && measure.dimension() == Dimension.EXTENSION
                && !Sites.standard().info(measure.site()).naturalExtension()) {
            String degrees = angle.degrees().toPlainString();
            throw new IllegalArgumentException("say on which side of neutral: '" + measure.words() + " lacks at least "
                    + degrees + "' or '" + measure.words() + " hyperextends at most " + degrees + "'.");
        }
    }

    private static Optional<Measure> measure(String words) {
        List<Motion> angular = Arrays.stream(Motion.values())
                .filter(motion -> motion.dimension() == Dimension.ANGLE || motion.dimension() == Dimension.EXTENSION)
                .toList();
        return angular.stream()
                .filter(motion -> words.equals(motion.words()) || words.endsWith(" " + motion.words()))
                .findFirst()
                .flatMap(motion -> site(
                                words.substring(
                                                0,
                                                words.length() - motion.words().length())
                                        .strip(),
                                motion)
                        .map(site -> new Measure(site, motion)));
    }

    private static Optional<Site> site(String words, Motion motion) {
        String code = words.startsWith("thumb ") ? words.substring("thumb ".length()) : words;
        return code.isEmpty()
                ? onlySite(motion)
                : Sites.standard().all().stream()
                        .map(Sites.Info::site)
                        .filter(site -> site.code().equalsIgnoreCase(code))
                        .findFirst();
    }

    /** The joint of a motion that is measured at one joint only. */
    private static Optional<Site> onlySite(Motion motion) {
        return switch (motion) {
            case RADIAL_ABDUCTION, PALMAR_ABDUCTION, ADDUCTION -> Optional.of(new Site("CMC"));
            case RADIAL_DEVIATION, ULNAR_DEVIATION -> Optional.of(new Site("wrist"));
            default -> Optional.empty();
        };
    }

    private static IllegalArgumentException notUnderstood(String statement) {
        return new IllegalArgumentException("'" + statement + "' is not understood." + HOW);
    }
}
