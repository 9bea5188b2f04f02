package org.arcsay.store;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.arcsay.model.Distance;
import org.arcsay.model.Entry;
import org.arcsay.model.EntryStatus;
import org.arcsay.model.Finding;
import org.arcsay.model.Finding.LabelledNumber;
import org.arcsay.model.Heard;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.arcsay.model.Placement;
import org.arcsay.model.Reading;
import org.arcsay.model.Remark;
import org.arcsay.model.Remark.Feel;
import org.arcsay.model.Remark.PainPlace;
import org.arcsay.model.Severity;
import org.arcsay.model.Side;
import org.arcsay.model.Sites;
import org.arcsay.model.Value;
import org.arcsay.model.Value.NotTestedReason;
import org.arcsay.model.Value.Phrase;
import org.arcsay.model.Versions;
import org.arcsay.model.Visit;

/** For one thread. Makes events that fit a visit, of every type and with every kind of content, the same ones for a seed. */
final class JournalGenerator {
    private static final Versions VERSIONS = new Versions("3f9c", "en-thumb 8a11", "1");

    private final Random random;
    private OffsetDateTime clock = OffsetDateTime.parse("2026-03-02T09:00:00+01:00");

    JournalGenerator(long seed) {
        random = new Random(seed);
    }

    /** An event that the visit accepts in its present state. */
    JournalEvent next(Visit visit) {
        clock = clock.plusNanos(1 + random.nextInt(2_000_000_000)).minusSeconds(random.nextInt(20) == 0 ? 7200 : 0);
        List<Entry> counting = visit.counting();
        int die = random.nextInt(10);
        if (counting.isEmpty() || die < 5) {
            return taken(visit, counting);
        }
        Entry entry = one(counting);
        return switch (die) {
            case 5, 6 -> new JournalEvent.Remarked(clock, entry.number(), remark(), by());
            case 7 ->
                new JournalEvent.Released(
                        clock,
                        counting.stream()
                                .filter(held -> held.status() == EntryStatus.HELD)
                                .findFirst()
                                .orElse(entry)
                                .number(),
                        by(),
                        "as said; repeated twice");
            case 8 -> new JournalEvent.Rejected(clock, entry.number(), by(), "patient moved");
            default ->
                random.nextInt(5) == 0
                        ? new JournalEvent.Ended(clock, by())
                        : new JournalEvent.Confirmed(clock, entry.number(), by());
        };
    }

    private JournalEvent taken(Visit visit, List<Entry> counting) {
        OptionalInt replaces = counting.isEmpty() || random.nextInt(4) > 0
                ? OptionalInt.empty()
                : OptionalInt.of(one(counting).number());
        return new JournalEvent.Taken(
                clock,
                visit.nextEntryNumber(),
                reading(),
                several(this::remark),
                several(this::finding),
                heard(),
                random.nextInt(4) == 0,
                replaces,
                by(),
                replaces.isPresent() ? "misheard; \"sixteen\" – not 'sixty'" : "");
    }

    Reading reading() {
        Motion motion = one(List.of(Motion.values()));
        Measure measure = new Measure(one(List.copyOf(Sites.standard().all())).site(), motion);
        return new Reading(
                one(List.of(Side.values())),
                measure,
                one(List.of(Mode.values())),
                value(motion),
                one(List.of(Placement.values())));
    }

    private Value value(Motion motion) {
        return switch (random.nextInt(8)) {
            case 0 -> new Value.NotTested(one(List.of(NotTestedReason.values())));
            case 1 -> new Value.Unquantified(one(List.of(Phrase.values())));
            default ->
                switch (motion.dimension()) {
                    case ANGLE -> Value.Angle.of(decimal(180));
                    case EXTENSION -> extension();
                    case GAP -> new Value.Gap(distance());
                    case SPAN -> new Value.Span(distance());
                    case SCORE -> new Value.Score(random.nextInt(11));
                };
        };
    }

    private Value extension() {
        return switch (random.nextInt(4)) {
            case 0 -> Value.Extension.neutral();
            case 1 -> Value.Extension.deficit(decimal(180));
            case 2 -> Value.Extension.hyperextension(decimal(180));
            default -> Value.Angle.of(decimal(180));
        };
    }

    private Distance distance() {
        Distance said = Distance.of(decimal(999), one(List.of(LengthUnit.values())));
        return random.nextInt(4) == 0 && said.unit() == LengthUnit.MILLIMETRE ? said.in(LengthUnit.INCH) : said;
    }

    private String decimal(int highest) {
        int whole = 1 + random.nextInt(highest - 1);
        return random.nextInt(3) == 0 ? whole + "." + random.nextInt(10) : String.valueOf(whole);
    }

    private Remark remark() {
        return switch (random.nextInt(3)) {
            case 0 ->
                new Remark.Pain(
                        one(List.of(PainPlace.values())),
                        random.nextBoolean() ? OptionalInt.of(random.nextInt(11)) : OptionalInt.empty());
            case 1 -> new Remark.Quality(one(List.of(Feel.values())));
            default -> new Remark.Note("after 20 min of warmth; scar \"pulls\" – 'tight'\nüber 2 Felder 手");
        };
    }

    private Finding finding() {
        Optional<Value> alternative = random.nextBoolean() ? Optional.of(value(Motion.FLEXION)) : Optional.empty();
        return new Finding(
                "limit.high",
                one(List.of(Severity.values())),
                "IP flexion of 140 degrees is above 100.",
                several(() -> new LabelledNumber("limit", decimal(180), "degrees")),
                alternative);
    }

    private Heard heard() {
        if (random.nextInt(4) == 0) {
            return Heard.typed("right ip flexion 60", VERSIONS);
        }
        Duration start = Duration.ofNanos(random.nextInt(Integer.MAX_VALUE));
        return new Heard(
                "ip flexion sixty",
                Heard.Source.VOICE,
                random.nextDouble(),
                start,
                start.plusMillis(random.nextInt(3000)),
                VERSIONS);
    }

    private String by() {
        return random.nextBoolean() ? "" : "HT";
    }

    private <T> List<T> several(java.util.function.Supplier<T> maker) {
        List<T> made = new ArrayList<>();
        for (int i = random.nextInt(3); i > 0; i--) {
            made.add(maker.get());
        }
        return made;
    }

    private <T> T one(List<T> choices) {
        return choices.get(random.nextInt(choices.size()));
    }
}
