package org.duskline.web.page;

import io.javalin.http.Context;
import java.util.Optional;
import org.duskline.web.door.Account;

/**
 * Who asks for a page.
 *
 * @param account who they are; empty for somebody outside
 * @param formToken what every form on their page must carry; see {@code piece/token.jte}
 * @param feedToken what stands in the address of their feeds, which begins with {@code /feeds/}; empty outside
 */
public record Visitor(Optional<Account> account, String formToken, String feedToken) {
    /** Nobody yet: what a page is made with before the gate has said who asks. */
    static final Visitor UNKNOWN = new Visitor(Optional.empty(), "", "");

    private static final String ATTRIBUTE = "duskline-visitor";

    /** Who asks. The gate has let them in, unless the address is open to all. */
    public static Visitor of(Context context) {
        Visitor visitor = context.attribute(ATTRIBUTE);
        return visitor == null ? UNKNOWN : visitor;
    }

    void remember(Context context) {
        context.attribute(ATTRIBUTE, this);
    }

    /** Whether they may see the pages. */
    public boolean inside() {
        return account.isPresent();
    }

    /** The name under which what they write is kept. */
    public String name() {
        return account.map(Account::name).orElse("somebody");
    }
}
