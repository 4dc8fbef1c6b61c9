package org.duskline.web.page;

import java.time.Duration;
import java.time.ZoneId;
import org.duskline.analyzer.evening.AtTheTrap;
import org.duskline.analyzer.evening.AtTheTrap.ByTheLight;
import org.duskline.analyzer.evening.AtTheTrap.Quiet;
import org.duskline.analyzer.evening.AtTheTrap.StillFlying;
import org.duskline.analyzer.evening.AtTheTrap.Stragglers;
import org.duskline.analyzer.evening.AtTheTrap.Unheard;
import org.duskline.web.page.board.Doorstep;

/** What the page says to somebody at a trap with a closure in hand: first the word, then the reason. */
public final class EntranceWords {
    private EntranceWords() {}

    /** Two or three words to be read at arm's length. */
    public static String headline(Doorstep at) {
        if (at.closed().isPresent()) {
            return "Closed";
        }
        AtTheTrap entrance = at.entrance();
        if (entrance instanceof StillFlying) {
            return "Still flying";
        }
        if (entrance instanceof Stragglers) {
            return "Close now";
        }
        if (entrance instanceof Quiet quiet) {
            return quiet.closeNow() ? "Close now" : "Quiet, but early";
        }
        return over(entrance) ? "Look, then close" : "Not yet";
    }

    /** The reason, and what to do. */
    public static String said(Doorstep at) {
        ZoneId zone = at.trap().trap().zone();
        String ends =
                Words.clock(at.flightEnd().at(), zone) + " (" + at.flightEnd().reason() + ")";
        AtTheTrap entrance = at.entrance();
        if (entrance instanceof StillFlying flying) {
            return rate(flying.perMinute()) + ". Wait until they are in.";
        }
        if (entrance instanceof Stragglers few) {
            return rate(few.perMinute()) + ": stragglers and guards at the door, no longer flight.";
        }
        if (entrance instanceof Quiet quiet) {
            String since = "No bee has passed for " + Words.length(quiet.quiet());
            return quiet.closeNow()
                    ? since + ". All that will come home is home."
                    : since + ". Flight may go on until about " + ends + ": better wait.";
        }
        if (entrance instanceof Unheard unheard) {
            return "The node was not heard for " + Words.length(unheard.silent()) + ". By the light flight "
                    + (unheard.over() ? "is over" : "may go on until about " + ends)
                    + ": watch the entrance for ten minutes yourself.";
        }
        return "Nothing counts bees here. By sun and warmth flight "
                + (over(entrance) ? "is over since " + ends : "may go on until about " + ends)
                + ": watch the entrance for ten minutes yourself.";
    }

    /** Whether the counter itself says that all are in. */
    public static boolean closeNow(Doorstep at) {
        boolean allIn = at.entrance() instanceof Stragglers || at.entrance() instanceof Quiet quiet && quiet.closeNow();
        return at.closed().isEmpty() && allIn;
    }

    /** Whether, without a counter's word, the light says that flight is over. */
    public static boolean over(Doorstep at) {
        return over(at.entrance());
    }

    /** "6 a minute", or how long from one to the next where they come singly. */
    private static String rate(double perMinute) {
        if (perMinute >= 1) {
            return Math.round(perMinute) + " a minute pass the entrance";
        }
        Duration between = Duration.ofSeconds(Math.round(60 / Math.max(perMinute, 0.01)));
        return "One passes every " + Words.length(between.toMinutes() < 1 ? Duration.ofMinutes(1) : between);
    }

    private static boolean over(AtTheTrap entrance) {
        return entrance instanceof ByTheLight light && light.over()
                || entrance instanceof Unheard unheard && unheard.over();
    }
}
