package org.duskline.analyzer.season;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/** The radio between a node and us: late, twice, out of order, torn, or not at all. How often is invented. */
final class Link {
    private final String node;
    private final boolean announces;
    private final boolean timed;
    private final Dice dice;
    private final double faults;
    private final List<TrapTruth.Offline> offline = new ArrayList<>();
    private final PriorityQueue<Parcel> underWay = new PriorityQueue<>(Comparator.comparingDouble(Parcel::received));
    private int spell;

    Link(World world, Habit habit, Dice dice, Level level) {
        this.node = habit.node();
        this.announces = habit.announcesStatus();
        this.timed = habit.times().absolute();
        this.dice = dice;
        this.faults = level.faults();
        // Some traps hang where reception is poor.
        double perDay = 0.06 * faults * (dice.chance(0.2) ? dice.uniform(4, 12) : dice.uniform(0.2, 1.5));
        double t = world.startSecond();
        while (true) {
            t += dice.exponential(86400 / Math.max(1e-4, perDay));
            if (t > world.endSecond()) {
                break;
            }
            double end = t + dice.lognormal(2.5 * 3600, 1.3, 400, 80 * 3600);
            offline.add(new TrapTruth.Offline(t, end, !habit.keepsBacklog()));
            t = end + 600;
        }
        say(world.startSecond() + dice.uniform(0, 3), "online");
        for (TrapTruth.Offline hole : offline) {
            // The broker gives up after one and a half keep-alive times (MQTT 3.1.1, section 3.1.2.10).
            say(hole.start() + dice.uniform(60, 120), "offline");
            say(hole.end() + dice.uniform(0, 2), "online");
        }
    }

    /** Whether the node is out of range at a moment; asked in order of time. */
    boolean silent(double t) {
        while (spell < offline.size() && offline.get(spell).end() <= t) {
            spell++;
        }
        return spell < offline.size() && offline.get(spell).covers(t);
    }

    void say(double at, String status) {
        if (announces) {
            underWay.add(new Parcel(at, node + "/status", status.getBytes(StandardCharsets.UTF_8), Parcel.NONE));
        }
    }

    void send(double at, byte[] payload, double[] samples) {
        double latency = dice.lognormal(0.35, 0.8, 0.03, 12);
        if (dice.chance(0.003 * faults)) {
            latency += dice.uniform(15, timed ? 500 : 45);
        }
        String topic = node + "/readings";
        if (dice.chance(0.0003 * faults)) {
            underWay.add(new Parcel(at + latency, topic, torn(payload), Parcel.NONE));
            return;
        }
        underWay.add(new Parcel(at + latency, topic, payload, samples));
        if (dice.chance(0.003 * faults)) {
            underWay.add(new Parcel(at + latency + dice.uniform(0.5, timed ? 90 : 20), topic, payload, samples));
        }
    }

    private byte[] torn(byte[] payload) {
        return switch (dice.whole(0, 2)) {
            case 0 -> Arrays.copyOf(payload, dice.whole(1, Math.max(1, payload.length - 2)));
            case 1 -> dice.bytes(dice.whole(3, 90));
            default -> {
                byte[] scratched = payload.clone();
                // The first byte goes too, so that nothing of it can pass for a pack.
                scratched[0] = 0x01;
                for (int i = 0; i < scratched.length / 12; i++) {
                    scratched[dice.whole(0, scratched.length - 1)] = dice.bytes(1)[0];
                }
                scratched[0] = 0x01;
                yield scratched;
            }
        };
    }

    Parcel peek() {
        return underWay.peek();
    }

    Parcel take() {
        return underWay.remove();
    }

    List<TrapTruth.Offline> truth() {
        return List.copyOf(offline);
    }
}
