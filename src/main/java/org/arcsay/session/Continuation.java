package org.arcsay.session;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.arcsay.model.Entry;
import org.arcsay.model.EntryStatus;
import org.arcsay.model.Visit;

/**
 * Goes back to where a sentence began that a pause had cut in two, so that it can be taken as a whole: only the thread that
 * owns the session may use it. Nothing is removed from the journal; what the first part changed is changed back by further
 * events, and what it took is replaced afterwards.
 */
final class Continuation {
    static final String WHY = "went on after a pause";

    private final Recorder recorder;
    private final Talk talk;
    private Talk talkBefore;
    private Visit before;
    private final Map<Integer, Integer> revived = new HashMap<>();

    Continuation(Recorder recorder, Talk talk) {
        this.recorder = recorder;
        this.talk = talk;
        this.talkBefore = talk.copy();
        this.before = recorder.visit();
    }

    /** A sentence begins. */
    void begin() {
        talkBefore = talk.copy();
        before = recorder.visit();
        revived.clear();
    }

    /** What the sentence took so far that stands for nothing older. */
    List<Integer> taken() {
        return recorder.visit().counting().stream()
                .map(Entry::number)
                .filter(number -> isNew(origin(number)))
                .toList();
    }

    private boolean isNew(int number) {
        return number > before.entries().size() && !revived.containsValue(number);
    }

    private int origin(int number) {
        OptionalInt older = recorder.entry(number).replaces();
        return older.isEmpty() || !isNew(number) ? number : origin(older.getAsInt());
    }

    /** Makes hand, mode, question and older entries what they were when the sentence began. */
    void rewind() throws JournalException {
        for (Entry old : before.counting()) {
            Entry now = recorder.entry(old.number());
            if (now.status() == EntryStatus.REJECTED && !revived.containsKey(old.number())) {
                revived.put(
                        old.number(),
                        recorder.take(old.reading(), old.heard(), OptionalInt.empty(), old.remarks(), WHY)
                                .number());
            } else if (now.counts() && !now.remarks().equals(old.remarks())) {
                recorder.take(old.reading(), old.heard(), OptionalInt.of(old.number()), old.remarks(), WHY);
            }
        }
        talk.set(talkBefore);
        talk.lastGroup = talkBefore.lastGroup.stream().map(this::standing).toList();
        talk.question = talkBefore.question().map(this::standing).orElse(null);
    }

    /** The entry that stands for an older one now. */
    private int standing(int number) {
        Integer again = revived.get(number);
        return again != null
                ? standing(again)
                : recorder.visit().counting().stream()
                        .filter(entry -> comesFrom(entry, number))
                        .map(Entry::number)
                        .findFirst()
                        .orElse(number);
    }

    private boolean comesFrom(Entry entry, int number) {
        return entry.replaces().isPresent()
                && (entry.replaces().getAsInt() == number
                        || comesFrom(recorder.entry(entry.replaces().getAsInt()), number));
    }

    private Question standing(Question question) {
        if (question instanceof Question.IsItRight asked) {
            return new Question.IsItRight(standing(asked.entry()), asked.finding());
        }
        if (question instanceof Question.Again asked) {
            return new Question.Again(standing(asked.entry()), standing(asked.earlier()), asked.finding());
        }
        return question instanceof Question.WhichNumber asked
                ? new Question.WhichNumber(standing(asked.entry()))
                : question;
    }
}
