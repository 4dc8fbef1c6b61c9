package org.duskline.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.InstantSource;
import java.util.Map;
import java.util.Optional;
import org.duskline.web.door.Account;
import org.duskline.web.door.Door;
import org.duskline.web.door.DoorRefusal;

/** Signing in, making an account with a one-time code, changing one's password, and signing out. */
final class WaysIn implements Part {
    private final Gate gate;
    private final Door door;
    private final InstantSource clock;

    WaysIn(Gate gate, Door door, InstantSource clock) {
        this.gate = gate;
        this.door = door;
        this.clock = clock;
    }

    @Override
    public void register(RoutesConfig routes) {
        routes.get("/sign-in", context -> signInPage(context, 200, "", ""));
        routes.post("/sign-in", this::signIn);
        routes.get("/join", context -> joinPage(context, 200, "", ""));
        routes.post("/join", this::join);
        routes.get("/more", context -> morePage(context, 200, ""));
        routes.post("/password", this::newPassword);
        routes.post("/sign-out", this::signOut);
    }

    private void signIn(Context context) {
        String name = text(context, "name");
        Optional<Account> account = door.recognise(name, text(context, "password"));
        if (account.isEmpty()) {
            signInPage(context, 403, name, "Name and password don’t go together. Try again.");
            return;
        }
        gate.letIn(context, account.get());
        context.redirect(ownPage(text(context, "to")), HttpStatus.SEE_OTHER);
    }

    private void join(Context context) {
        String name = text(context, "name");
        try {
            gate.letIn(context, door.accept(text(context, "code"), name, text(context, "password")));
            context.redirect("/", HttpStatus.SEE_OTHER);
        } catch (DoorRefusal refusal) {
            joinPage(context, 403, name, refusal.getMessage());
        }
    }

    private void newPassword(Context context) {
        Account account = Visitor.of(context).account().orElseThrow();
        if (door.recognise(account.name(), text(context, "old")).isEmpty()) {
            morePage(context, 403, "That is not your present password. Nothing was changed.");
            return;
        }
        try {
            door.newPassword(account.name(), text(context, "password"));
            gate.letIn(context, account);
            context.redirect("/more", HttpStatus.SEE_OTHER);
        } catch (DoorRefusal refusal) {
            morePage(context, 403, refusal.getMessage());
        }
    }

    private void signOut(Context context) {
        gate.seeOut(context);
        context.redirect(door.hasOwner() ? "/sign-in" : "/", HttpStatus.SEE_OTHER);
    }

    private void signInPage(Context context, int status, String name, String complaint) {
        String to = Optional.ofNullable(context.queryParam("to")).orElseGet(() -> text(context, "to"));
        show(context, status, "Sign in", "signin", new WayInView(name, ownPage(to), complaint, door.hasOwner()));
    }

    private void joinPage(Context context, int status, String name, String complaint) {
        show(context, status, "Make an account", "join", new WayInView(name, "/", complaint, door.hasOwner()));
    }

    private void morePage(Context context, int status, String complaint) {
        String name = Visitor.of(context).name();
        show(context, status, "More", "more", new WayInView(name, "/", complaint, door.hasOwner()));
    }

    private void show(Context context, int status, String title, String template, WayInView view) {
        Shell shell = new Shell(title, template, clock.instant(), Optional.empty());
        context.status(status)
                .header("Cache-Control", "no-store")
                .render(template + ".jte", Map.of("shell", shell, "view", view));
    }

    private static String text(Context context, String field) {
        return Optional.ofNullable(context.formParam(field)).orElse("");
    }

    /** An address of ours, and never one of another host's that somebody has put into a link. */
    private static String ownPage(String asked) {
        return asked.matches("/(?![/\\\\])[^\\\\\\p{Cntrl}]*") ? asked : "/";
    }
}
