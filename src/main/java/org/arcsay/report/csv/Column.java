package org.arcsay.report.csv;

import java.util.Arrays;
import java.util.List;
import java.util.Set;

/** The columns of the file, in order; one row is one reading, and a visit without readings has one row of its own. */
enum Column {
    VISIT("visit"),
    PATIENT("patient"),
    VISIT_STARTED("visit_started"),
    VISIT_ENDED("visit_ended"),
    ENTRY("entry"),
    TAKEN_AT("taken_at"),
    SIDE("side"),
    JOINT("joint"),
    MOTION("motion"),
    MODE("mode"),
    KIND("kind"),
    VALUE("value"),
    UNIT("unit"),
    DETAIL("detail"),
    PLACEMENT("placement"),
    REMARKS("remarks"),
    STATUS("status"),
    REPLACES("replaces"),
    WAS_HELD("was_held"),
    ACCEPTED_AT("accepted_at"),
    ACCEPTED_BY("accepted_by"),
    ACCEPTED_WHY("accepted_why"),
    CONFIRMED_AT("confirmed_at"),
    CONFIRMED_BY("confirmed_by"),
    REJECTED_AT("rejected_at"),
    REJECTED_BY("rejected_by"),
    REJECTED_WHY("rejected_why"),
    FINDINGS("findings"),
    HEARD_TEXT("heard_text"),
    HEARD_SOURCE("heard_source"),
    HEARD_CONFIDENCE("heard_confidence"),
    HEARD_START("heard_start"),
    HEARD_END("heard_end"),
    TAKEN_BY("taken_by"),
    TAKEN_WHY("taken_why"),
    GRAMMAR("grammar"),
    MODEL("model"),
    RULES("rules"),
    CONVENTION("convention"),
    PLAN("plan");

    /** Columns that files of earlier versions lack. */
    static final Set<Column> LATER = Set.of(PLAN);

    private final String title;

    Column(String title) {
        this.title = title;
    }

    String title() {
        return title;
    }

    static List<String> titles() {
        return Arrays.stream(values()).map(Column::title).toList();
    }
}
