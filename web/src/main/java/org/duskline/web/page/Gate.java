package org.duskline.web.page;

import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.HandlerType;
import io.javalin.http.SameSite;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.duskline.web.door.Account;
import org.duskline.web.door.Door;

/**
 * Stands before every route: who asks, may they, and did the form that they send come from us. Each browser holds one
 * random value in a cookie; it names a session once somebody has signed in with it, and before that serves the forms'
 * tokens alone. Signing in and out both change it.
 */
final class Gate {
    private static final String COOKIE = "duskline-visitor";
    private static final String FIELD = "token";
    private static final String HEADER = "Duskline-Token";
    private static final String FEEDS = "/feeds/";
    private static final Set<HandlerType> CHANGE_NOTHING =
            Set.of(HandlerType.GET, HandlerType.HEAD, HandlerType.OPTIONS);

    /** What holds nothing of the line's, and what a browser fetches without its cookie. */
    private static final List<String> FOR_EVERYBODY = List.of("/assets/", "/webjars/", "/manifest.webmanifest");

    /** What is entered with a proof of its own: a password, a code, a signed link. */
    private static final Set<String> WAYS_IN = Set.of("/sign-in", "/join", "/answer");

    /** A page of another host that has itself resolved to this machine must not read an open house. */
    private static final Set<String> THIS_MACHINE = Set.of("localhost", "127.0.0.1", "[::1]");

    /** In an open house nobody has a name. */
    private static final Account GUEST = new Account(0, "keeper", Account.Role.OWNER);

    private final Entrance entrance;
    private final Door door;

    Gate(Entrance entrance) {
        this.entrance = entrance;
        this.door = entrance.door();
    }

    void check(Context context) {
        if (FOR_EVERYBODY.stream().anyMatch(context.path()::startsWith)) {
            return;
        }
        Visitor visitor = context.path().startsWith(FEEDS) ? feedReader(context) : visitor(context);
        visitor.remember(context);
        if (!visitor.inside() && !WAYS_IN.contains(context.path())) {
            throw new SignInFirst(wayIn(context));
        }
    }

    private Visitor visitor(Context context) {
        String browser = Optional.ofNullable(context.cookie(COOKIE)).orElseGet(() -> {
            String fresh = door.stranger();
            give(context, fresh);
            return fresh;
        });
        if (!CHANGE_NOTHING.contains(context.method()) && !door.fits(browser, sentToken(context))) {
            throw new FormRefused();
        }
        Optional<Account> account = door.holder(browser).or(() -> guest(context));
        if (account.isPresent() && door.lengthen(browser)) {
            give(context, browser);
        }
        return new Visitor(
                account, door.formToken(browser), account.map(door::feedToken).orElse(""));
    }

    private static String sentToken(Context context) {
        return Optional.ofNullable(context.header(HEADER))
                .or(() -> Optional.ofNullable(context.formParam(FIELD)))
                .orElse("");
    }

    private Optional<Account> guest(Context context) {
        String host = Optional.ofNullable(context.host()).orElse("").replaceFirst(":\\d+$", "");
        return entrance.openHouse() && THIS_MACHINE.contains(host) && !door.hasOwner()
                ? Optional.of(GUEST)
                : Optional.empty();
    }

    /** A calendar can neither sign in nor keep a cookie: its address is its proof, good for reading feeds alone. */
    private Visitor feedReader(Context context) {
        String token = context.path().substring(FEEDS.length()).split("/", 2)[0];
        Stream<Account> holders = Stream.concat(door.accounts().stream(), guest(context).stream());
        return holders.filter(account -> CHANGE_NOTHING.contains(context.method()) && door.fitsFeed(account, token))
                .findFirst()
                .map(account -> new Visitor(Optional.of(account), "", token))
                .orElseThrow(() -> new NotHere("This feed's address does not hold. Copy it anew from its page."));
    }

    private String wayIn(Context context) {
        if (!door.hasOwner()) {
            return "/join";
        }
        String query = Optional.ofNullable(context.queryString())
                .map(text -> "?" + text)
                .orElse("");
        String asked = context.method() == HandlerType.GET ? context.path() + query : "/";
        return asked.equals("/") ? "/sign-in" : "/sign-in?to=" + URLEncoder.encode(asked, StandardCharsets.UTF_8);
    }

    /** Signs somebody in, here. */
    void letIn(Context context, Account account) {
        forget(context);
        give(context, door.begin(account));
    }

    /** Signs out whoever is signed in, here. */
    void seeOut(Context context) {
        forget(context);
        give(context, door.stranger());
    }

    private void forget(Context context) {
        Optional.ofNullable(context.cookie(COOKIE)).ifPresent(door::end);
    }

    private void give(Context context, String browser) {
        int seconds = (int) door.lasts().toSeconds();
        context.cookie(new Cookie(COOKIE, browser, "/", seconds, entrance.encrypted(), true, null, SameSite.LAX));
    }
}
