package org.duskline.web.page;

import static java.nio.charset.StandardCharsets.UTF_8;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.net.URLEncoder;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.analyzer.visit.VisitLog;
import org.duskline.web.deliver.AnswerLink;
import org.duskline.web.page.board.Watchboard;

/**
 * Answering a finding: by somebody who is signed in, and by whoever holds the signed link of a message. Looking changes
 * nothing, also for what looks at links by itself, such as a mail program; a button does. Programs go by
 * {@link AnswerApi}.
 */
public final class AnswerPages implements Part {
    private final Watchboard board;
    private final FindingLog findings;
    private final Answering answering;
    private final AnswerLink links;
    private final InstantSource clock;

    /**
     * @param links checks the links of messages
     * @param clock the present; an answer is never later
     */
    public AnswerPages(
            Watchboard board,
            FindingLog findings,
            AnswerLog answers,
            VisitLog visits,
            AnswerLink links,
            InstantSource clock) {
        this.board = board;
        this.findings = findings;
        this.answering = new Answering(answers, visits);
        this.links = links;
        this.clock = clock;
    }

    @Override
    public void register(RoutesConfig routes) {
        routes.get("/answers", this::inside);
        routes.post("/answers", this::answerInside);
        routes.get("/answer", this::byLink);
        routes.post("/answer", this::answerByLink);
        new AnswerApi(findings, answering, clock).register(routes);
    }

    private void inside(Context context) {
        Finding finding = FindingAddress.find(findings, field(context, "finding"));
        show(context, finding, Optional.empty(), Visitor.of(context).name(), "");
    }

    private void answerInside(Context context) {
        Finding finding = FindingAddress.find(findings, field(context, "finding"));
        String name = Visitor.of(context).name();
        boolean tuning = field(context, "then").equals("tuning");
        answer(context, finding, Optional.empty(), name, tuning ? Links.tuning(finding) : Links.answer(finding));
    }

    private void byLink(Context context) {
        String link = field(context, "link");
        AnswerLink.Claim claim = claim(link);
        show(context, finding(claim), Optional.of(link), claim.person(), "");
    }

    private void answerByLink(Context context) {
        String link = field(context, "link");
        AnswerLink.Claim claim = claim(link);
        answer(context, finding(claim), Optional.of(link), claim.person(), "/answer?link=" + encoded(link));
    }

    private AnswerLink.Claim claim(String link) {
        AnswerLink.Check check = links.verify(link, clock.instant());
        if (check instanceof AnswerLink.Check.Valid valid) {
            return valid.claim();
        }
        throw check instanceof AnswerLink.Check.Expired expired
                ? LinkRefused.over(expired.claim(), zone(expired.claim().trap()))
                : LinkRefused.damaged();
    }

    private Finding finding(AnswerLink.Claim claim) {
        return findings.find(claim.trap(), claim.kind(), claim.onset())
                .orElseThrow(() -> new NotHere("What this link is about at " + claim.trap() + " is no longer kept."));
    }

    private void answer(Context context, Finding finding, Optional<String> link, String by, String then) {
        Instant now = clock.instant();
        try {
            AnswerEntry entry = AnswerEntry.read(
                    name -> Optional.of(field(context, name)).filter(text -> !text.isEmpty()), finding.kind(), now);
            answering.write(finding, entry, by, now);
            context.appData(Pages.NEWS).accept(new News.SheetChanged());
            context.redirect(then, HttpStatus.SEE_OTHER);
        } catch (BadRequest wrong) {
            context.status(HttpStatus.BAD_REQUEST);
            show(context, finding, link, by, wrong.getMessage());
        }
    }

    private void show(Context context, Finding finding, Optional<String> link, String name, String complaint) {
        AnswerView view = new AnswerView(
                finding,
                zone(finding.trap()),
                answering.given(finding),
                UUID.randomUUID().toString(),
                link,
                name,
                complaint.isEmpty() ? "" : field(context, "note"),
                complaint,
                clock.instant());
        Shell shell =
                new Shell(finding.trap() + ", " + Words.kind(finding.kind()), "alerts", view.now(), Optional.empty());
        // A signed link stands in the address: no copy of the page may outlive it.
        context.header("Cache-Control", link.isPresent() ? "no-store" : "no-cache")
                .render("answer.jte", Map.of("shell", shell, "view", view));
    }

    private ZoneId zone(String trap) {
        return board.trap(trap).map(detail -> detail.trap().trap().zone()).orElse(ZoneOffset.UTC);
    }

    private static String field(Context context, String name) {
        return Optional.ofNullable(context.formParam(name))
                .or(() -> Optional.ofNullable(context.queryParam(name)))
                .map(String::strip)
                .orElse("");
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, UTF_8);
    }
}
