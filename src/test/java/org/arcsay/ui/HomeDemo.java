package org.arcsay.ui;

import org.arcsay.review.DemoVisit;
import org.arcsay.review.HomeModel;
import org.arcsay.review.HomeScript;

/** Shows the first screen, to look at: {@code HomeDemo light|dark percent visits|empty}. */
public final class HomeDemo {
    private HomeDemo() {}

    public static void main(String[] args) throws NoScreenException {
        HomeModel model = new HomeModel(args[2].equals("empty") ? new HomeScript() : new HomeScript(DemoVisit.visit()));
        Look look = new Look(args[0].equals("dark"), Integer.parseInt(args[1]));
        WindowHost.run(stage -> HomeWindow.show(stage, model, look));
    }
}
