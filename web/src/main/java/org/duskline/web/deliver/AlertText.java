package org.duskline.web.deliver;

import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.StringJoiner;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.duskline.analyzer.evening.Caution;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Rival;
import org.duskline.analyzer.finding.SwarmSize;
import org.duskline.collector.trap.Trap;

/** Words a finding for somebody who has only this message: what, how sure, since when, how big, what to do by when. */
final class AlertText {
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("EEE d MMM, HH:mm", Locale.ENGLISH);
    private static final Duration LINK_LASTS = Duration.ofDays(3);
    private static final int REASONS = 5;
    private static final int RIVALS = 3;
    private static final int BEES_ROUNDED_TO = 500;

    private final Function<String, Optional<Trap>> traps;
    private final AnswerLink links;
    private final Optional<URI> pages;

    /**
     * @param traps the line, by a trap's name
     * @param links signs the links by which the reader answers
     * @param pages where the reader's browser finds the pages; without it no link is written
     */
    AlertText(Function<String, Optional<Trap>> traps, AnswerLink links, Optional<URI> pages) {
        this.traps = traps;
        this.links = links;
        this.pages = pages;
    }

    /** A message's one line and the whole of it. */
    record Written(String title, String words) {}

    Written write(Finding finding, Person person, Instant now) {
        StringJoiner lines = new StringJoiner("\n");
        lines.add("What: " + capital(what(finding)) + " at " + finding.trap() + ".");
        switch (finding.stage()) {
            case RAISED, ARRIVED, STRENGTHENED -> standing(lines, finding, person, now);
            case WITHDRAWN -> withdrawn(lines, finding, person);
            case ENDED ->
                lines.add("It began " + moment(finding.onset(), person.zone()) + " and is over since "
                        + moment(finding.changed(), person.zone()) + ".");
        }
        link(finding, person, now).ifPresent(link -> lines.add("Answer: " + link));
        story(finding).ifPresent(link -> lines.add("The whole story, for who may sign in: " + link));
        return new Written(finding.trap() + ": " + what(finding), lines.toString());
    }

    private static String what(Finding finding) {
        String what = Phrases.what(finding.kind());
        return switch (finding.stage()) {
            case RAISED, ARRIVED -> what;
            case STRENGTHENED -> what + ", borne out since";
            case ENDED -> what + ": over";
            case WITHDRAWN -> "withdrawn, no longer held: " + what;
        };
    }

    private void standing(StringJoiner lines, Finding finding, Person person, Instant now) {
        lines.add("How sure: " + Phrases.sure(finding.probability()) + otherwise(finding) + ".");
        lines.add("Since: " + moment(finding.onset(), person.zone()) + ", "
                + age(Duration.between(finding.onset(), now)) + ".");
        finding.size().ifPresent(size -> lines.add("How big: " + size(size) + "."));
        reasons(lines, finding);
        lines.add("What to do: " + Phrases.toDo(finding.kind()));
        lines.add("By when: " + byWhen(finding, person, now) + ".");
        lines.add("Take care:");
        Phrases.cautions(finding.kind()).stream().map(Caution::said).forEach(said -> lines.add("- " + said));
    }

    private static void withdrawn(StringJoiner lines, Finding finding, Person person) {
        lines.add("You were told of this since " + moment(finding.onset(), person.zone())
                + ". What followed does not bear it out.");
        likeliest(finding, RIVALS).ifPresent(rivals -> lines.add("Most likely now: " + rivals + "."));
        reasons(lines, finding);
        lines.add("What to do: No drive is needed for it. If you are there already, look all the same.");
    }

    private static void reasons(StringJoiner lines, Finding finding) {
        lines.add("What it rests on: " + finding.summary());
        finding.evidence().stream().limit(REASONS).forEach(evidence -> lines.add("- " + evidence.said()));
    }

    private String byWhen(Finding finding, Person person, Instant now) {
        Optional<Trap> trap = finding.kind() == Kind.MOVE_IN ? traps.apply(finding.trap()) : Optional.empty();
        return trap.map(known -> ClosingHours.words(known, now, person.zone()))
                .orElseGet(() -> Phrases.byWhen(finding.kind()));
    }

    private static String otherwise(Finding finding) {
        return finding.kind() == Kind.MOVE_IN
                ? likeliest(finding, RIVALS)
                        .map(rivals -> "; otherwise " + rivals)
                        .orElse("")
                : "";
    }

    private static Optional<String> likeliest(Finding finding, int many) {
        List<Map.Entry<Rival, Double>> others = finding.rivals().entrySet().stream()
                .filter(rival -> rival.getKey() != Rival.SWARM && rival.getValue() >= 0.01)
                .sorted(Map.Entry.<Rival, Double>comparingByValue(Comparator.reverseOrder()))
                .limit(many)
                .toList();
        return others.isEmpty()
                ? Optional.empty()
                : Optional.of(others.stream()
                        .map(rival -> Phrases.rival(rival.getKey()) + " " + Math.round(rival.getValue() * 100) + " %")
                        .collect(Collectors.joining(", ")));
    }

    private Optional<String> link(Finding finding, Person person, Instant now) {
        return pages.filter(there -> finding.standing())
                .map(there -> address(there, "answer?link=")
                        + links.issue(new AnswerLink.Claim(
                                person.name(), finding.trap(), finding.kind(), finding.onset(), now.plus(LINK_LASTS))));
    }

    private Optional<String> story(Finding finding) {
        return pages.map(there ->
                address(there, "story?finding=") + URLEncoder.encode(FindingName.of(finding), StandardCharsets.UTF_8));
    }

    private static String address(URI pages, String page) {
        return pages + (pages.toString().endsWith("/") ? "" : "/") + page;
    }

    private static String size(SwarmSize size) {
        return String.format(
                Locale.ENGLISH,
                "about %.1f kg (%.1f to %.1f), some %,d bees",
                size.kg(),
                size.lowKg(),
                size.highKg(),
                Math.round((double) size.bees() / BEES_ROUNDED_TO) * BEES_ROUNDED_TO);
    }

    static String moment(Instant time, ZoneId zone) {
        return MOMENT.format(time.atZone(zone));
    }

    private static String age(Duration age) {
        long minutes = Math.max(0, age.toMinutes());
        if (minutes < 90) {
            return minutes + " min ago";
        }
        long hours = Math.round(minutes / 60.0);
        return hours < 48 ? hours + " h ago" : Math.round(hours / 24.0) + " days ago";
    }

    private static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ENGLISH) + words.substring(1);
    }

    /** Before the evening, or when its hour has come. */
    Written reminder(List<Unanswered> traps, boolean closableNow, Person reader, Instant now) {
        String names = traps.stream().map(trap -> trap.moveIn().trap()).collect(Collectors.joining(", "));
        String title =
                (closableNow ? "Nobody has closed it yet: " : "To close this evening, not answered yet: ") + names;
        StringJoiner lines = new StringJoiner("\n");
        lines.add(title + ".");
        for (Unanswered trap : traps) {
            lines.add("");
            lines.add(trap.moveIn().trap() + ": a swarm has moved in, "
                    + Phrases.sure(trap.moveIn().probability()) + ". It can be closed from "
                    + moment(trap.closable(), reader.zone()) + " to " + moment(trap.shuts(), reader.zone()) + ".");
            link(trap.moveIn(), reader, now).ifPresent(link -> lines.add("Answer: " + link));
        }
        lines.add("");
        lines.add("Take care:");
        Phrases.cautions(Kind.MOVE_IN).stream().map(Caution::said).forEach(said -> lines.add("- " + said));
        return new Written(title, lines.toString());
    }

    static Written deadChannel(Channel dead, Instant since, String words, Person reader) {
        String title = "Nothing gets through to " + dead.person().name() + " by " + dead.named();
        return new Written(
                title,
                title + " since " + moment(since, reader.zone()) + ".\nIt says: " + words
                        + "\nWhat waits there is kept and tried again. Until then watch the other channels.");
    }

    /** After the program itself was down. */
    static Written missed(Pulse.Gap gap, int readings, List<String> happened, Person reader) {
        String title = "Duskline was down from " + moment(gap.from(), reader.zone()) + " to "
                + moment(gap.until(), reader.zone());
        StringJoiner lines = new StringJoiner("\n");
        lines.add(title + " and told nobody anything in that time.");
        lines.add("It has now read " + readings + " messages of the nodes that came in meanwhile.");
        lines.add(
                happened.isEmpty()
                        ? "Nothing was found in them that you want to hear of."
                        : "Found in them; each is told in a message of its own:");
        happened.forEach(one -> lines.add("- " + one));
        return new Written(title, lines.toString());
    }
}
