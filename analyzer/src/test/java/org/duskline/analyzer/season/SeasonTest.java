package org.duskline.analyzer.season;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.wire.Message;
import org.duskline.collector.wire.ReadingPack;
import org.duskline.collector.wire.Topic;
import org.duskline.collector.wire.UnreadableMessage;
import org.junit.jupiter.api.Test;

class SeasonTest {
    private static final int DAYS = 24;
    private static final int TRAPS = 5;

    @Test
    void the_same_seed_gives_the_same_messages_and_the_same_truth() {
        SeasonStream one = Season.of(41, Level.TYPICAL, 6, 3).play();
        SeasonStream other = Season.of(41, Level.TYPICAL, 6, 3).play();
        while (one.hasNext()) {
            Message message = one.next();
            Message again = other.next();
            assertEquals(message.received(), again.received());
            assertEquals(message.topic(), again.topic());
            assertArrayEquals(message.payload(), again.payload());
        }
        assertFalse(other.hasNext());
        assertEquals(one.truth(), other.truth());
    }

    @Test
    void messages_come_in_the_order_of_their_receipt() {
        SeasonStream stream = Season.of(5, Level.HARSH, DAYS, TRAPS).play();
        Instant last = Instant.MIN;
        while (stream.hasNext()) {
            Message message = stream.next();
            assertFalse(message.received().isBefore(last));
            last = message.received();
        }
    }

    @Test
    void nearly_every_message_can_be_decoded_whatever_the_nodes_habits() throws UnreadableMessage {
        for (long seed = 60; seed < 64; seed++) {
            SeasonStream stream = Season.of(seed, Level.CLEAN, 4, 12).play();
            Map<String, Integer> unreadable = new HashMap<>();
            int all = 0;
            while (stream.hasNext()) {
                Message message = stream.next();
                Topic topic = Topic.parse(message.topic());
                all++;
                if (topic.kind() == Topic.Kind.READINGS && !isReadable(message)) {
                    unreadable.merge(topic.node(), 1, Integer::sum);
                }
            }
            int torn = unreadable.values().stream().mapToInt(Integer::intValue).sum();
            assertTrue(torn < all / 500 + 2, "unreadable: " + unreadable + " of " + all);
        }
    }

    private static boolean isReadable(Message message) {
        try {
            return ReadingPack.decode(message.payload()).size() > 0;
        } catch (UnreadableMessage torn) {
            return false;
        }
    }

    @Test
    void the_truth_is_not_told_before_the_season_is_over() {
        SeasonStream stream = Season.of(7, Level.TYPICAL, 2, 1).play();
        assertThrows(IllegalStateException.class, stream::truth);
    }

    @Test
    void swarms_are_as_heavy_as_swarms_in_louisiana() {
        // Mean 1.42 kg, 0.17 to 4.30 (Villa 2004, bioone.org, doi 10.1603/0013-8746(2004)097[0111:SBOHBH]2.0.CO;2).
        Dice dice = new Dice(1);
        double sum = 0;
        int count = 4000;
        for (int i = 0; i < count; i++) {
            double mass = new Swarm(dice, 0).massKg();
            assertTrue(mass >= 0.17 && mass <= 4.3);
            sum += mass;
        }
        // Four standard errors of the mean, with a deviation of about 0.75 kg.
        assertEquals(1.42, sum / count, 0.05);
    }

    @Test
    void a_swarm_is_half_in_between_its_first_and_last_bee() {
        Dice dice = new Dice(2);
        for (int i = 0; i < 300; i++) {
            Swarm swarm = new Swarm(dice, 1000);
            assertEquals(0.5, swarm.inside(swarm.half()), 0.01);
            assertEquals(0, swarm.inside(swarm.start()), 1e-9);
            assertTrue(swarm.inside(swarm.end()) > 0.96);
        }
    }

    @Test
    void scouts_and_swarms_come_in_flight_weather_only() {
        Season season = Season.of(11, Level.TYPICAL, 60, 8);
        Weather weather = new Weather(season.world(), new Dice(11).fork("weather"), 1);
        List<TrapTruth.Arrival> arrivals = new ArrayList<>();
        drain(season.play()).traps().forEach(t -> arrivals.addAll(t.arrivals()));
        assertFalse(arrivals.isEmpty());
        for (TrapTruth.Arrival arrival : arrivals) {
            // Above 12.8 degrees in light (Mussen 2010, ceventura.ucanr.edu "White Gold").
            assertTrue(weather.celsius(arrival.start()) > 12.8);
            assertTrue(weather.sunHeight(arrival.start()) > 0);
            assertTrue(arrival.scoutsStart() <= arrival.start());
        }
    }

    private static Truth drain(SeasonStream stream) {
        while (stream.hasNext()) {
            stream.next();
        }
        return stream.truth();
    }

    @Test
    void a_harsh_season_has_more_faults_than_a_clean_one() {
        int clean = 0;
        int harsh = 0;
        for (long seed = 1; seed <= 3; seed++) {
            clean += faults(drain(Season.of(seed, Level.CLEAN, DAYS, TRAPS).play()));
            harsh += faults(drain(Season.of(seed, Level.HARSH, DAYS, TRAPS).play()));
        }
        assertTrue(harsh > 5 * clean, harsh + " against " + clean);
    }

    private static int faults(Truth truth) {
        return truth.traps().stream()
                .mapToInt(t -> t.sensorFaults().size() + t.reboots().size())
                .sum();
    }

    @Test
    void beams_lose_bees_in_a_crowd_by_their_dead_time() {
        // The non-paralyzable model: measured = true / (1 + true x dead time).
        Faults faults = new Faults(Season.of(1, Level.CLEAN, 1, 1).world(), new Dice(9), Level.CLEAN, Fitted.SCALE, 0);
        Beams few = new Beams(List.of((t, flow) -> flow.add(10, 0)), List.of(), faults, new Dice(3));
        Beams many = new Beams(List.of((t, flow) -> flow.add(3000, 0)), List.of(), faults, new Dice(3));
        few.count(0, 60_000);
        many.count(0, 60_000);
        double shareOfFew = (few.in() + few.out()) / 10_000.0;
        double shareOfMany = (many.in() + many.out()) / 3_000_000.0;
        assertTrue(shareOfFew > 0.85 && shareOfFew < 1.1, "of few " + shareOfFew);
        assertTrue(shareOfMany < 0.8 * shareOfFew, "of many " + shareOfMany);
    }

    @Test
    void a_half_float_is_written_where_it_is_exact() {
        // RFC 8949, appendix A: 1.5 is f93e00, 65504.0 is f97bff, 100000.0 is fa47c35000, -4.0 is f9c400.
        assertEquals("f93e00", shortest(1.5f));
        assertEquals("f97bff", shortest(65504f));
        assertEquals("fa47c35000", shortest(100000f));
        assertEquals("f9c400", shortest(-4f));
    }

    private static String shortest(float value) {
        CborWriter writer = new CborWriter(new ByteArrayOutputStream());
        writer.shortest(value);
        return HexFormat.of().formatHex(writer.bytes());
    }

    @Test
    void a_decimal_fraction_is_written_as_in_its_standard() {
        // RFC 8949, section 3.4.4: 273.15 is C4 82 21 19 6ab3.
        CborWriter writer = new CborWriter(new ByteArrayOutputStream());
        writer.decimal(new BigDecimal("273.15"));
        assertEquals("c48221196ab3", HexFormat.of().formatHex(writer.bytes()));
    }
}
