package org.arcsay;

import org.arcsay.cli.ArcsayCommand;

/** Entry point of the program: everything is a command. */
public final class Main {
    private Main() {}

    public static void main(String[] arguments) {
        System.exit(ArcsayCommand.run(arguments));
    }
}
