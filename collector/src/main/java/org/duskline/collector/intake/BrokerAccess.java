package org.duskline.collector.intake;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.duskline.collector.wire.Topic;

/**
 * Who may use the embedded broker: one line a name, {@code NAME node HASH} or {@code NAME listener HASH}. A node may
 * publish and hear under its own name only; a listener may hear everything and publish nothing. Passwords are made here,
 * 100 random bits each, and never kept: such a one cannot be guessed from its SHA-256, as one that somebody thought up
 * could. The file is read at each connection, so that a change holds from the next one on.
 */
public final class BrokerAccess {
    private static final String LETTERS = "abcdefghjkmnpqrstuvwxyz23456789";
    private static final int PASSWORD_LETTERS = 21;
    private static final int GROUP = 7;

    private final Path file;

    /** What a name is for. */
    public enum Use {
        NODE,
        LISTENER;

        private String word() {
            return name().toLowerCase(Locale.ROOT);
        }

        private static Optional<Use> of(String word) {
            return List.of(values()).stream()
                    .filter(use -> use.word().equals(word))
                    .findFirst();
        }
    }

    private record Entry(String name, Use use, String hash) {
        String line() {
            return name + " " + use.word() + " " + hash;
        }
    }

    /** @param file need not be there yet: then nobody is known */
    public BrokerAccess(Path file) {
        this.file = file;
    }

    /** What the name is for, if the password is its own. */
    Optional<Use> use(String name, String password) {
        return entries().stream()
                .filter(entry -> entry.name().equals(name) && same(entry.hash(), hash(name, password)))
                .map(Entry::use)
                .findFirst();
    }

    /** The names that are known, in the order of the file. Complains in words where the file is damaged. */
    public List<String> names() {
        return entries().stream().map(Entry::name).toList();
    }

    /**
     * Lets a name in, with a fresh password; an earlier one of that name no longer holds.
     *
     * @return the password, which cannot be asked for again
     */
    public String admit(String name, Use use) {
        if (!Topic.isNodeName(name)) {
            throw new IllegalArgumentException(
                    "\"" + name + "\" is no name for the broker: it takes 1 to 32 of A-Z, a-z, 0-9, _ and -.");
        }
        String password = freshPassword();
        List<Entry> all = new ArrayList<>(entries());
        all.removeIf(entry -> entry.name().equals(name));
        all.add(new Entry(name, use, hash(name, password)));
        write(all);
        return password;
    }

    /** Lets a name in no longer. Returns whether it was known. */
    public boolean dismiss(String name) {
        List<Entry> all = new ArrayList<>(entries());
        boolean known = all.removeIf(entry -> entry.name().equals(name));
        if (known) {
            write(all);
        }
        return known;
    }

    private List<Entry> entries() {
        if (!Files.exists(file)) {
            return List.of();
        }
        List<Entry> entries = new ArrayList<>();
        int number = 0;
        for (String line : lines()) {
            number++;
            if (!line.isBlank() && !line.startsWith("#")) {
                entries.add(entry(line.strip(), number));
            }
        }
        return entries;
    }

    private Entry entry(String line, int number) {
        String[] parts = line.split("\\s+");
        Optional<Use> use = parts.length == 3 ? Use.of(parts[1]) : Optional.empty();
        if (use.isEmpty() || !Topic.isNodeName(parts[0])) {
            throw new BrokerProblem(
                    file + ", line " + number
                            + ", does not read NAME node HASH or NAME listener HASH. Take the line out"
                            + " and make that password anew (\"duskline password NAME\").",
                    null);
        }
        return new Entry(parts[0], use.get(), parts[2]);
    }

    private List<String> lines() {
        try {
            return Files.readAllLines(file);
        } catch (IOException e) {
            throw new BrokerProblem(
                    "The names and passwords in " + file + " cannot be read: " + e.getMessage()
                            + ". Check the file's rights and the setting broker.passwords.",
                    e);
        }
    }

    private void write(List<Entry> entries) {
        List<String> lines = new ArrayList<>();
        lines.add(
                "# Names and hashes of their passwords for the broker inside Duskline, written by \"duskline password\".");
        entries.forEach(entry -> lines.add(entry.line()));
        try {
            Path draft = file.resolveSibling(file.getFileName() + ".new");
            Files.write(draft, lines);
            if (Files.getFileStore(draft).supportsFileAttributeView("posix")) {
                Files.setPosixFilePermissions(draft, PosixFilePermissions.fromString("rw-------"));
            }
            Files.move(draft, file, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            throw new BrokerProblem(
                    "The passwords cannot be written to " + file + ": " + e.getMessage()
                            + ". Check that its folder is there and can be written to.",
                    e);
        }
    }

    private static String freshPassword() {
        SecureRandom random = new SecureRandom();
        StringBuilder password = new StringBuilder();
        for (int i = 0; i < PASSWORD_LETTERS; i++) {
            password.append(i > 0 && i % GROUP == 0 ? "-" : "")
                    .append(LETTERS.charAt(random.nextInt(LETTERS.length())));
        }
        return password.toString();
    }

    /** With the name in it, so that the same password under two names does not show. */
    private static String hash(String name, String password) {
        try {
            byte[] text = ("duskline " + name + " " + password).getBytes(StandardCharsets.UTF_8);
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(text));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("Every Java has SHA-256.", impossible);
        }
    }

    private static boolean same(String one, String other) {
        return MessageDigest.isEqual(
                one.getBytes(StandardCharsets.US_ASCII), other.getBytes(StandardCharsets.US_ASCII));
    }
}
