package org.duskline.web.door;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import org.duskline.collector.store.Store;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** Accounts, sessions and codes. Safe for many threads. */
public final class Door {
    /** Long enough for an invitation that was read out over the telephone to be used at the weekend. */
    static final Duration INVITATION_LASTS = Duration.ofDays(7);

    private static final int LONGEST_NAME = 60;

    private final Jdbi jdbi;
    private final InstantSource clock;
    private final Passwords passwords = new Passwords();
    private final Secrets secrets = new Secrets();
    private final String formKey;
    private final String feedKey;

    private Door(Jdbi jdbi, InstantSource clock) {
        this.jdbi = jdbi;
        this.clock = clock;
        jdbi.useHandle(handle -> handle.createUpdate("INSERT INTO door_key (one, form_key, feed_key)"
                        + " VALUES (1, :form, :feed) ON CONFLICT (one) DO NOTHING")
                .bind("form", secrets.token())
                .bind("feed", secrets.token())
                .execute());
        this.formKey = key("form_key");
        this.feedKey = key("feed_key");
    }

    /** Opens the accounts in a store and brings their tables up to date. */
    public static Door open(Store store, InstantSource clock) {
        store.migrate("door_history", "classpath:org/duskline/web/door");
        return new Door(store.jdbi(), clock);
    }

    private String key(String column) {
        return jdbi.withHandle(handle -> handle.select("SELECT " + column + " FROM door_key")
                .mapTo(String.class)
                .one());
    }

    /** Whether anybody has an account; until then the pages are for this machine alone. */
    public boolean hasOwner() {
        return jdbi.withHandle(Accounts::any);
    }

    /** All accounts, in the order in which they were made. */
    public List<Account> accounts() {
        return jdbi.withHandle(Accounts::all);
    }

    /**
     * Makes the owner's account, for somebody who sits at the machine itself.
     *
     * @throws DoorRefusal if there is one already, or the name or password will not do
     */
    public Account makeOwner(String name, String password) {
        String hash = checkedAndHashed(password);
        return jdbi.inTransaction(handle -> {
            if (Accounts.any(handle)) {
                throw new DoorRefusal("There is an owner already: "
                        + Accounts.all(handle).get(0).name() + ".");
            }
            return add(handle, name, Account.Role.OWNER, hash);
        });
    }

    /** A fresh one-time code by which the owner's account is made in the browser; earlier ones no longer hold. */
    public String ownersCode() {
        return jdbi.inTransaction(handle -> {
            handle.execute("DELETE FROM invitation WHERE role = ?", Account.Role.OWNER.name());
            return invite(handle, Optional.empty(), Account.Role.OWNER);
        });
    }

    /** A one-time code by which somebody makes an account of this name within a week; earlier ones for it no longer hold. */
    public String invite(String name) {
        String tidy = tidyName(name);
        return jdbi.inTransaction(handle -> {
            if (Accounts.named(handle, tidy).isPresent()) {
                throw new DoorRefusal(tidy + " has an account already.");
            }
            handle.execute("DELETE FROM invitation WHERE name = ?", tidy);
            return invite(handle, Optional.of(tidy), Account.Role.KEEPER);
        });
    }

    private String invite(Handle handle, Optional<String> name, Account.Role role) {
        String code = secrets.code();
        handle.createUpdate("INSERT INTO invitation (mark, name, role, ends_ms) VALUES (:mark, :name, :role, :ends)")
                .bind("mark", Secrets.mark(Secrets.tidy(code)))
                .bind("name", name.orElse(null))
                .bind("role", role.name())
                .bind("ends", clock.instant().plus(INVITATION_LASTS).toEpochMilli())
                .execute();
        return code;
    }

    private record Invitation(Optional<String> name, Account.Role role) {}

    /**
     * Makes the account that a one-time code is for.
     *
     * @param name chosen by the owner; ignored where the code is for a name
     * @throws DoorRefusal if the code does not hold, or the name or password will not do; the code then still holds
     */
    public Account accept(String code, String name, String password) {
        String mark = Secrets.mark(Secrets.tidy(code));
        jdbi.useHandle(handle -> invitation(handle, mark));
        String hash = checkedAndHashed(password);
        return jdbi.inTransaction(handle -> {
            Invitation invitation = invitation(handle, mark);
            Account account = add(handle, invitation.name().orElse(name), invitation.role(), hash);
            handle.execute("DELETE FROM invitation WHERE mark = ?", mark);
            return account;
        });
    }

    private Invitation invitation(Handle handle, String mark) {
        return handle.createQuery("SELECT name, role FROM invitation WHERE mark = :mark AND ends_ms > :now")
                .bind("mark", mark)
                .bind("now", clock.instant().toEpochMilli())
                .map((row, context) -> new Invitation(
                        Optional.ofNullable(row.getString("name")), Account.Role.valueOf(row.getString("role"))))
                .findOne()
                .orElseThrow(() -> new DoorRefusal("This code does not hold: it was used, is older than a week, or was"
                        + " mistyped. Ask for a new one."));
    }

    /** Outside of any transaction, because it takes a while. */
    private String checkedAndHashed(String password) {
        Passwords.check(password);
        return passwords.hash(password);
    }

    private Account add(Handle handle, String name, Account.Role role, String passwordHash) {
        String tidy = tidyName(name);
        if (Accounts.named(handle, tidy).isPresent()) {
            throw new DoorRefusal(tidy + " has an account already. Sign in, or take another name.");
        }
        return Accounts.add(handle, tidy, role, passwordHash, clock.instant());
    }

    /** A name without needless blanks, as accounts are kept under. */
    public static String tidyName(String name) {
        String tidy = name.strip().replaceAll("\\s+", " ");
        if (tidy.isEmpty() || tidy.length() > LONGEST_NAME) {
            throw new DoorRefusal("A name has 1 to " + LONGEST_NAME + " characters.");
        }
        return tidy;
    }

    /**
     * Gives an account a new password and ends its sessions everywhere.
     *
     * @throws DoorRefusal if nobody has that name, or the password will not do
     */
    public void newPassword(String name, String password) {
        String hash = checkedAndHashed(password);
        jdbi.useTransaction(handle -> {
            Account account = Accounts.named(handle, name.strip())
                    .orElseThrow(() -> new DoorRefusal("Nobody named " + name.strip() + " has an account."));
            Accounts.password(handle, account, hash);
            Sessions.endAll(handle, account);
        });
    }

    /** The account of this name and password, if they fit. */
    public Optional<Account> recognise(String name, String password) {
        Optional<String> hash = jdbi.withHandle(handle -> Accounts.passwordHash(handle, name.strip()));
        if (hash.isEmpty()) {
            passwords.waste(password);
            return Optional.empty();
        }
        return passwords.fits(password, hash.get())
                ? jdbi.withHandle(handle -> Accounts.named(handle, name.strip()))
                : Optional.empty();
    }

    /** What a browser that is not known yet is given to be known by. */
    public String stranger() {
        return secrets.token();
    }

    /** Begins a session; the browser is given what is returned, and nobody else. */
    public String begin(Account account) {
        String token = secrets.token();
        jdbi.useTransaction(handle -> Sessions.begin(handle, token, account, clock.instant()));
        return token;
    }

    /** Who holds this session, if it still lasts. */
    public Optional<Account> holder(String token) {
        Instant now = clock.instant();
        return jdbi.withHandle(handle -> Sessions.account(handle, token, now));
    }

    /** Lengthens a session that is in use. @return whether the browser should be told */
    public boolean lengthen(String token) {
        Instant now = clock.instant();
        boolean worn = jdbi.withHandle(handle -> Sessions.worn(handle, token, now));
        if (worn) {
            jdbi.useHandle(handle -> Sessions.lengthen(handle, token, now));
        }
        return worn;
    }

    /** How long a session lasts that is not used. */
    public Duration lasts() {
        return Sessions.LASTS;
    }

    /** Ends a session. */
    public void end(String token) {
        jdbi.useHandle(handle -> Sessions.end(handle, token));
    }

    /** What a form made for this browser carries, so that a form made by somebody else is known not to be ours. */
    public String formToken(String browser) {
        return Secrets.seal(formKey, browser);
    }

    /** Whether a form's token was made for this browser. */
    public boolean fits(String browser, String formToken) {
        return Secrets.same(formToken(browser), formToken);
    }

    /** What a feed's address carries instead of a password, because a calendar cannot sign in. It reads, and no more. */
    public String feedToken(Account account) {
        return account.id() + "." + Secrets.seal(feedKey, "feed " + account.id());
    }

    /** Whether a feed's address was made for this account. */
    public boolean fitsFeed(Account account, String token) {
        return Secrets.same(feedToken(account), token);
    }
}
