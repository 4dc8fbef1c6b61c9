package org.duskline.analyzer.season;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/** The node's board: samples on its period, packs, restarts, a clock that may be wrong, a battery that runs down. */
final class Board {
    /** Seconds from 1970 to 2000, where some clock chips begin. */
    private static final double YEAR_2000 = 946_684_800;

    private record Pack(List<Reading> readings, long seq) {}

    private final Habit habit;
    private final Post post;
    private final Link link;
    private final Faults faults;
    private final Packer packer;
    private final Dice dice;
    private final double faultRate;
    private final double end;
    private final double batteryStart;
    private final double batteryPerDay;
    private final double origin;
    private final double clockError;
    private final List<TrapTruth.Reboot> reboots = new ArrayList<>();
    private final double[] restarts;
    private final Deque<Pack> backlog = new ArrayDeque<>();
    private List<Reading> pending = new ArrayList<>();
    private int nextRestart;
    private double t;
    private double last;
    private double bootedAt;
    private long boot;
    private long seq;
    private int wrongPacks;
    private double wrongBy;

    Board(World world, Habit habit, Post post, Link link, Faults faults, Dice dice, Level level, double end) {
        this.habit = habit;
        this.post = post;
        this.link = link;
        this.faults = faults;
        this.packer = new Packer(habit);
        this.dice = dice;
        this.faultRate = level.faults();
        this.end = Math.min(end, faults.diedAt());
        this.origin = world.startSecond();
        boolean dying = faults.diedAt() < Double.MAX_VALUE;
        this.batteryStart = dice.uniform(3.9, 4.15);
        double days = (this.end - origin) / 86400;
        this.batteryPerDay = dying ? (batteryStart - 3.25) / Math.max(5, days) : dice.uniform(0, 0.35) / world.days();
        this.clockError = dice.gauss(0, 1.5);
        this.restarts = dice.moments(origin + 3600, this.end, 0.03 * faultRate);
        this.t = origin + dice.uniform(0, habit.periodSeconds());
        this.last = origin;
        this.bootedAt = origin - dice.uniform(0, 5e5);
        this.boot = dice.whole(1, 40);
    }

    /** The next message, or null when there is none left. */
    Parcel next() {
        while (t < end && (link.peek() == null || link.peek().received() > t)) {
            step();
        }
        return link.peek() == null ? null : link.take();
    }

    private void step() {
        if (nextRestart < restarts.length && restarts[nextRestart] <= t) {
            restart(restarts[nextRestart++]);
            return;
        }
        if (!link.silent(t)) {
            flush();
        }
        pending.add(post.read(last, t, dips()));
        last = t;
        if (pending.size() >= habit.samplesPerPack()) {
            Pack pack = new Pack(pending, seq++);
            pending = new ArrayList<>();
            if (!link.silent(t)) {
                send(pack, t + dice.uniform(0.05, 0.4));
            } else if (habit.keepsBacklog()) {
                backlog.add(pack);
            }
        }
        t += habit.periodSeconds() + Math.max(-0.2, Math.min(0.2, dice.gauss(0, 0.004))) * habit.periodSeconds();
    }

    private boolean dips() {
        return faults.firstWithin("counter_dip", last, t) != null;
    }

    private void flush() {
        double at = t;
        while (!backlog.isEmpty()) {
            send(backlog.poll(), at);
            at += dice.uniform(0.02, 0.3);
        }
    }

    private void send(Pack pack, double at) {
        double[] times = pack.readings().stream().mapToDouble(Reading::at).toArray();
        double shift = clockError + (wrongPacks > 0 ? wrongBy : 0);
        wrongPacks = Math.max(0, wrongPacks - 1);
        List<Reading> told = pack.readings();
        double sent = at;
        if (habit.times().absolute()) {
            told = told.stream().map(r -> r.moved(shift)).toList();
            sent = at + shift;
        }
        link.send(at, packer.pack(told, sent, battery(at), boot, pack.seq()), times);
    }

    private double battery(double at) {
        double sun = 0.02 * Math.sin(2 * Math.PI * (at % 86400) / 86400);
        return batteryStart - batteryPerDay * (at - origin) / 86400 + sun + dice.gauss(0, 0.004);
    }

    private void restart(double at) {
        double down = dice.chance(0.1) ? dice.lognormal(3600, 0.8, 600, 20000) : dice.lognormal(25, 0.8, 3, 300);
        boolean wrong = habit.times().absolute() && dice.chance(0.3);
        wrongPacks = wrong ? dice.whole(1, 6) : 0;
        bootedAt = at + down;
        t = bootedAt + dice.uniform(1, 10);
        wrongBy = wrongClock();
        pending = new ArrayList<>();
        if (dice.chance(0.5)) {
            backlog.clear();
        }
        post.restart();
        last = t;
        boot++;
        seq = 0;
        if (down > 60) {
            link.say(at + 90, "offline");
        }
        link.say(t, "online");
        reboots.add(new TrapTruth.Reboot(at, down, down > 600 ? "battery" : "watchdog", wrongPacks));
    }

    /** Never set (seconds since the start), a chip that begins in 2000, or days off. */
    private double wrongClock() {
        return switch (dice.whole(0, 2)) {
            case 0 -> -bootedAt;
            case 1 -> YEAR_2000 - bootedAt;
            default -> dice.uniform(-30, 400) * 86400;
        };
    }

    List<TrapTruth.Reboot> reboots() {
        return List.copyOf(reboots);
    }
}
