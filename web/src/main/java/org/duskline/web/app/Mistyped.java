package org.duskline.web.app;

import org.duskline.web.settings.NearestName;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.TypeConversionException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Says in words what was wrong on the command line, and what was probably meant. */
final class Mistyped {
    private Mistyped() {}

    static String words(ParameterException mistake) {
        if (mistake instanceof UnmatchedArgumentException unmatched) {
            return unknown(
                    mistake.getCommandLine().getCommandSpec(),
                    unmatched.getUnmatched().get(0));
        }
        return mistake.getMessage();
    }

    private static String unknown(CommandSpec asked, String word) {
        if (word.startsWith("-")) {
            return "\"" + asked.qualifiedName() + "\" has no option " + word + "."
                    + NearestName.hint(word, asked.optionsMap().keySet());
        }
        if (asked.parent() == null) {
            return "There is no command \"" + word + "\"."
                    + NearestName.hint(word, asked.subcommands().keySet());
        }
        return "\"" + asked.qualifiedName() + "\" has no use for \"" + word
                + "\". If it belongs to a name with a space in it, put the whole name between quotation marks.";
    }

    static Integer wholeNumber(String text) {
        try {
            return Integer.valueOf(text);
        } catch (NumberFormatException none) {
            throw new TypeConversionException("\"" + text + "\" is no whole number");
        }
    }

    static Double number(String text) {
        try {
            return Double.valueOf(text);
        } catch (NumberFormatException none) {
            throw new TypeConversionException("\"" + text + "\" is no number");
        }
    }
}
