package org.arcsay.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.Measure;
import org.arcsay.model.Reading;
import org.arcsay.model.Remark;
import org.arcsay.model.Value;
import org.arcsay.review.DraftReading.Field;
import org.arcsay.review.DraftReading.Problem;
import org.arcsay.review.TypedValue.Result;

/** Turns a draft into a reading, or says field by field what is missing. Used by one thread at a time. */
final class DraftReader {
    private final Draft draft;
    private final ClinicSettings settings;
    private final List<Problem> problems = new ArrayList<>();

    private DraftReader(Draft draft, ClinicSettings settings) {
        this.draft = draft;
        this.settings = settings;
    }

    static DraftReading read(Draft draft, ClinicSettings settings) {
        return new DraftReader(draft, settings).read();
    }

    private DraftReading read() {
        if (draft.side().isEmpty()) {
            problems.add(new Problem(Field.SIDE, "Choose the side: left or right."));
        }
        if (draft.measure().isEmpty()) {
            problems.add(new Problem(Field.MEASURE, "Choose what was measured."));
        }
        if (draft.mode().isEmpty()) {
            problems.add(new Problem(Field.MODE, "Choose active or passive."));
        }
        Optional<Value> value = draft.measure().flatMap(this::value);
        List<Remark> remarks = remarks();
        return new DraftReading(
                problems.isEmpty() ? value.map(this::reading) : Optional.empty(), remarks, problems, List.of());
    }

    private Reading reading(Value value) {
        return new Reading(
                draft.side().orElseThrow(),
                draft.measure().orElseThrow(),
                draft.mode().orElseThrow(),
                value,
                draft.placement());
    }

    private Optional<Value> value(Measure measure) {
        Result result = TypedValue.read(draft.value(), measure, settings);
        if (result instanceof Result.Understood understood) {
            return Optional.of(understood.value());
        }
        problems.add(new Problem(Field.VALUE, ((Result.NotUnderstood) result).message()));
        return Optional.empty();
    }

    private List<Remark> remarks() {
        List<Remark> remarks = new ArrayList<>(draft.remarks());
        addPain(remarks);
        draft.feel().map(Remark.Quality::new).ifPresent(remarks::add);
        if (draft.note().length() > 500) {
            problems.add(new Problem(
                    Field.NOTE,
                    "A note has at most 500 characters; this one has "
                            + draft.note().length() + "."));
        } else if (!draft.note().isBlank()) {
            remarks.add(new Remark.Note(draft.note().strip()));
        }
        return remarks;
    }

    private void addPain(List<Remark> remarks) {
        String score = draft.painScore().strip();
        if (draft.pain().isEmpty()) {
            if (!score.isEmpty()) {
                problems.add(new Problem(Field.PAIN, "Choose where the pain is felt, or clear the pain score."));
            }
        } else if (score.isEmpty()) {
            remarks.add(new Remark.Pain(draft.pain().get(), OptionalInt.empty()));
        } else if (score.matches("\\d|10")) {
            remarks.add(new Remark.Pain(draft.pain().get(), OptionalInt.of(Integer.parseInt(score))));
        } else {
            problems.add(new Problem(Field.PAIN, "A pain score is a whole number from 0 to 10, not '" + score + "'."));
        }
    }
}
