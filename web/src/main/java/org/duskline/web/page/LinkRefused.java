package org.duskline.web.page;

import java.time.ZoneId;
import org.duskline.web.deliver.AnswerLink;

/** A link of a message that does not hold, or no longer. The message says what to do instead. */
final class LinkRefused extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final boolean over;

    private LinkRefused(String message, boolean over) {
        super(message);
        this.over = over;
    }

    static LinkRefused over(AnswerLink.Claim claim, ZoneId zone) {
        return new LinkRefused(
                "This link about " + claim.trap() + " held until " + Words.shortDay(claim.ends(), zone) + ", "
                        + Words.clock(claim.ends(), zone) + ".",
                true);
    }

    static LinkRefused damaged() {
        return new LinkRefused("The link is not whole, or Duskline did not make it.", false);
    }

    Trouble trouble() {
        return over
                ? new Trouble(
                        410, "This link’s time is over", getMessage(), "Sign in and answer from the list of alerts.")
                : new Trouble(
                        403,
                        "This link does not hold",
                        getMessage(),
                        "Copy it whole from the message, or sign in and answer from the list of alerts.");
    }
}
