package org.duskline.analyzer.evening;

import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VAlarm;
import biweekly.component.VEvent;
import biweekly.io.text.ICalWriter;
import biweekly.parameter.Related;
import biweekly.property.Geo;
import biweekly.property.Status;
import biweekly.property.Trigger;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Date;
import java.util.List;
import java.util.UUID;
import org.duskline.analyzer.finding.Finding;
import org.duskline.collector.trap.Trap;

/**
 * Evening sheets as an iCalendar feed (RFC 5545): an event for each trap to close, with an alarm before its window, and
 * a tentative one without an alarm for each doubtful trap.
 */
public final class SheetCalendar {
    private SheetCalendar() {}

    /**
     * Writes the feed.
     *
     * @param sheets any number of evenings
     * @param lead how long before setting out the alarm goes off
     * @return the text, lines folded and ended as the standard asks
     */
    public static String of(List<EveningSheet> sheets, Duration lead) {
        ICalendar calendar = new ICalendar();
        calendar.setProductId("-//Duskline//Evening sheet//EN");
        for (EveningSheet sheet : sheets) {
            sheet.round().stops().forEach(stop -> calendar.addEvent(toClose(sheet, stop, lead)));
            sheet.doubtful().forEach(each -> calendar.addEvent(doubtful(sheet, each)));
        }
        return ContentLines.folded(unfolded(calendar));
    }

    /** The library folds one character too late and counts characters for octets, so the folding is done here. */
    private static String unfolded(ICalendar calendar) {
        StringWriter text = new StringWriter();
        try (ICalWriter writer = new ICalWriter(text, ICalVersion.V2_0)) {
            writer.getVObjectWriter().getFoldedLineWriter().setLineLength(null);
            writer.write(calendar);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return text.toString();
    }

    private static VEvent toClose(EveningSheet sheet, Stop stop, Duration lead) {
        VEvent event = event(sheet, stop.trap(), stop.moveIn(), stop.flightEnd().window());
        event.setSummary("Close " + stop.trap().name());
        event.setDescription("Stop " + stop.number() + " of "
                + sheet.round().stops().size() + ". "
                + SheetWords.percent(stop.moveIn().probability()) + " sure: "
                + stop.moveIn().summary() + "\nLift " + stop.lift().said() + ".\n" + Caution.LOCAL_RULES.said() + "\n"
                + Caution.HEAT.said());
        event.setStatus(Status.confirmed());
        Instant leave = sheet.round().leave().orElse(stop.flightEnd().at());
        Duration before = Duration.between(leave, stop.flightEnd().at()).plus(lead);
        event.addAlarm(VAlarm.display(trigger(before), "Close " + stop.trap().name() + " tonight"));
        return event;
    }

    private static VEvent doubtful(EveningSheet sheet, Doubtful each) {
        VEvent event = event(sheet, each.trap(), each.moveIn(), each.flightEnd().window());
        event.setSummary("Perhaps " + each.trap().name());
        event.setDescription(SheetWords.percent(each.moveIn().probability()) + " sure: "
                + each.moveIn().summary() + "\n" + String.join("\n", each.settles()));
        event.setStatus(Status.tentative());
        return event;
    }

    private static VEvent event(EveningSheet sheet, Trap trap, Finding moveIn, Window window) {
        VEvent event = new VEvent();
        event.setUid(identity(sheet, trap, moveIn) + "@duskline");
        event.setDateTimeStamp(Date.from(sheet.made()));
        event.setDateStart(Date.from(window.opens()));
        event.setDateEnd(Date.from(window.closes()));
        event.setLocation(trap.name());
        event.setGeo(new Geo(trap.latitude(), trap.longitude()));
        return event;
    }

    /** The same evening at the same trap keeps its event, however often the feed is read. */
    private static UUID identity(EveningSheet sheet, Trap trap, Finding moveIn) {
        String named = sheet.evening() + "\n" + trap.name() + "\n" + moveIn.onset();
        return UUID.nameUUIDFromBytes(named.getBytes(StandardCharsets.UTF_8));
    }

    private static Trigger trigger(Duration before) {
        return new Trigger(biweekly.util.Duration.fromMillis(-before.toSeconds() * 1000), Related.START);
    }
}
