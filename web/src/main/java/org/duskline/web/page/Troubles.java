package org.duskline.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import java.time.InstantSource;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.duskline.web.page.board.BoardUnavailable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Answers in words when something goes wrong: as a page to people, as problem details (RFC 9457) to programs. */
final class Troubles {
    private static final Logger LOG = LoggerFactory.getLogger(Troubles.class);

    private final InstantSource clock;

    Troubles(InstantSource clock) {
        this.clock = clock;
    }

    void register(RoutesConfig routes) {
        routes.exception(
                BadRequest.class,
                (wrong, context) -> answer(
                        context,
                        new Trouble(
                                400,
                                "That address can’t be read",
                                wrong.getMessage(),
                                "Go back, or start from the line.")));
        routes.exception(
                NotHere.class,
                (missing, context) -> answer(
                        context,
                        new Trouble(
                                404,
                                "Nothing hangs here",
                                missing.getMessage(),
                                "It may have been renamed. The line shows every trap.")));
        routes.exception(LinkRefused.class, (refused, context) -> answer(context, refused.trouble()));
        routes.exception(SignInFirst.class, this::signInFirst);
        routes.exception(
                FormRefused.class,
                (refused, context) -> answer(
                        context,
                        new Trouble(
                                403,
                                "Nothing was changed",
                                "This form did not come from a page of ours, or the page lay open too long.",
                                "Go back, reload the page and send it again.")));
        routes.exception(BoardUnavailable.class, (broken, context) -> {
            LOG.error("The stored data can’t be read", broken);
            answer(
                    context,
                    new Trouble(
                            503,
                            "The records can’t be read just now",
                            broken.getMessage(),
                            "Samples that arrive wait at the broker and are not lost. Run \"doctor\" on the machine"
                                    + " that Duskline runs on; it says what is wrong with the database."));
        });
        routes.exception(HttpResponseException.class, (wrong, context) -> answer(context, refused(wrong, context)));
        routes.exception(Exception.class, this::unexpected);
    }

    /** People are led to where they can sign in; a program, and a page that asks for news of itself, is told. */
    private void signInFirst(SignInFirst outside, Context context) {
        boolean part = context.header("HX-Request") != null;
        if (part) {
            context.header("HX-Redirect", outside.where());
        }
        if (part || context.path().startsWith("/api/") || context.path().equals("/live")) {
            answer(
                    context,
                    new Trouble(
                            401,
                            "Sign in first",
                            context.path() + " is for people with an account.",
                            outside.getMessage()));
            return;
        }
        context.header("Cache-Control", "no-store").redirect(outside.where(), HttpStatus.SEE_OTHER);
    }

    private static Trouble refused(HttpResponseException wrong, Context context) {
        if (wrong.getStatus() == 404) {
            return new Trouble(
                    404,
                    "There is no such page",
                    "Nothing is kept at " + context.path() + ".",
                    "Tonight, the line and the alerts are one tap away.");
        }
        return new Trouble(wrong.getStatus(), "That can’t be answered", wrong.getMessage(), "Start from the line.");
    }

    private void unexpected(Exception broken, Context context) {
        String number = UUID.randomUUID().toString().substring(0, 8);
        LOG.error("Could not answer {} (number {})", context.path(), number, broken);
        answer(
                context,
                new Trouble(
                        500,
                        "Something broke on our side",
                        "The page " + context.path() + " could not be made.",
                        "Try again. If it stays, look in the log for number " + number + " and report it."));
    }

    private void answer(Context context, Trouble trouble) {
        context.status(trouble.status()).header("Cache-Control", "no-store");
        if (context.path().startsWith("/api/")) {
            context.json(problem(trouble)).contentType("application/problem+json");
            return;
        }
        Shell shell = new Shell(trouble.title(), "", clock.instant(), Optional.empty());
        context.render("trouble.jte", Map.of("shell", shell, "trouble", trouble));
    }

    private static Map<String, Object> problem(Trouble trouble) {
        Map<String, Object> problem = new LinkedHashMap<>();
        problem.put("title", trouble.title());
        problem.put("status", trouble.status());
        problem.put("detail", trouble.said());
        problem.put("next", trouble.next());
        return problem;
    }
}
