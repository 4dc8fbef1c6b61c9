package org.duskline.web.app;

/** The program's entry: only wires and hands over to the command line. */
public final class Main {
    private Main() {}

    public static void main(String[] arguments) {
        System.exit(arguments.length);
    }
}
