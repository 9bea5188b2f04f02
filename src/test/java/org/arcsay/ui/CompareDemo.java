package org.arcsay.ui;

import java.util.Locale;
import java.util.Optional;
import org.arcsay.model.Side;
import org.arcsay.report.ReportWriters;
import org.arcsay.report.compare.CompareModel;
import org.arcsay.report.compare.DemoRecords;
import org.arcsay.report.content.DemoCase;

/** Shows the comparison of the invented patient, to look at: {@code CompareDemo light|dark percent left|right height}. */
public final class CompareDemo {
    private CompareDemo() {}

    public static void main(String[] args) throws NoScreenException {
        CompareModel model = new CompareModel(new DemoRecords(), DemoCase::source, ReportWriters.standard());
        model.chooseSide(Side.valueOf(args[2].toUpperCase(Locale.ROOT)));
        Look look = new Look(args[0].equals("dark"), Integer.parseInt(args[1]));
        WindowHost.run(stage -> {
            stage.setX(0);
            stage.setY(0);
            stage.setWidth(1280);
            stage.setHeight(Double.parseDouble(args[3]));
            CompareWindow.show(stage, model, look, name -> Optional.empty());
        });
    }
}
