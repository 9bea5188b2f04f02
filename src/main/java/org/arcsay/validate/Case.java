package org.arcsay.validate;

import java.util.List;
import java.util.stream.Stream;
import org.arcsay.model.Entry;
import org.arcsay.model.Motion;
import org.arcsay.model.Reading;
import org.arcsay.model.Remark;
import org.arcsay.model.Slot;
import org.arcsay.model.Visit;

/**
 * One reading to be judged with everything it is judged against.
 *
 * @param reading the reading
 * @param remarks what was said about it
 * @param number its number in the visit, or the next number for a reading that is not yet an entry
 * @param others the other entries of the visit that count, in order of number
 * @param history what is known from before
 */
public record Case(Reading reading, List<Remark> remarks, int number, List<Entry> others, History history) {
    public Case {
        remarks = List.copyOf(remarks);
        others = List.copyOf(others);
    }

    static Case candidate(Reading reading, List<Remark> remarks, Visit visit, History history) {
        return new Case(reading, remarks, visit.nextEntryNumber(), visit.counting(), history);
    }

    static Case correcting(Reading reading, int replaced, Visit visit, History history) {
        return new Case(reading, List.of(), visit.nextEntryNumber(), without(replaced, visit), history);
    }

    static Case entry(Entry entry, Visit visit, History history) {
        return new Case(entry.reading(), entry.remarks(), entry.number(), without(entry.number(), visit), history);
    }

    /** Other entries of this visit in that slot, in order of number. */
    Stream<Entry> at(Slot slot) {
        return others.stream().filter(other -> other.reading().slot().equals(slot));
    }

    /** Other entries of this visit with the same side, site and mode but that motion. */
    Stream<Entry> sameJoint(Motion motion) {
        return at(new Slot(reading.side(), reading.measure().withMotion(motion), reading.mode()));
    }

    /** Other entries of this visit with the same side and motion at any site. */
    Stream<Entry> sameSeries() {
        return others.stream()
                .filter(other -> other.reading().side() == reading.side())
                .filter(other ->
                        other.reading().measure().motion() == reading.measure().motion());
    }

    private static List<Entry> without(int number, Visit visit) {
        return visit.counting().stream()
                .filter(entry -> entry.number() != number)
                .toList();
    }
}
