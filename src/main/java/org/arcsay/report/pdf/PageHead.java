package org.arcsay.report.pdf;

import java.util.Locale;
import org.arcsay.model.Side;
import org.arcsay.model.Visit;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.Standing;

/**
 * Title, patient, visit and standing.
 *
 * @param report what is reported
 * @param side the hand of this page
 * @param width room from left to right
 */
record PageHead(Report report, Side side, float width) implements Block {
    @Override
    public float height() {
        return 45;
    }

    @Override
    public void draw(Pen pen, float x, float y) {
        Visit visit = report.current().visit();
        String title = Wording.capital(side.word()) + " " + report.part() + ": range of motion";
        String lead = "Patient " + visit.patient() + "   ·   visit of " + Wording.minute(visit.startedAt()) + "   ·   "
                + earlier();
        pen.piece(Style.TITLE.role(), () -> pen.text(title, Style.TITLE, x, y + 17));
        pen.piece(Style.LEAD.role(), () -> pen.text(lead, Style.LEAD, x, y + 33));
        pen.piece(Style.STAMP.role(), () -> stamp(pen, x + width, y + 3));
        pen.line(x, y + 41, x + width, y + 41, 1.2f, 0);
    }

    private String earlier() {
        int earlier = report.source().visits().size() - 1;
        return earlier == 0 ? "first visit" : earlier + (earlier == 1 ? " earlier visit" : " earlier visits");
    }

    private void stamp(Pen pen, float right, float y) {
        String word = report.standing().code().toUpperCase(Locale.ROOT);
        float textWidth = pen.typeface().width(word, Style.STAMP);
        float box = textWidth + 14;
        boolean open = report.standing() == Standing.PRELIMINARY;
        pen.frame(right - box, y, box, 16, open ? 2 : 0.8f, 0);
        pen.text(word + " ", Style.STAMP, right - box + 7, y + 11.4f);
        String meaning = open
                ? "not confirmed yet"
                : "confirmed" + (report.standing() == Standing.AMENDED ? ", then changed" : "");
        pen.textRight(meaning, Style.SMALL, right, y + 26);
    }
}
