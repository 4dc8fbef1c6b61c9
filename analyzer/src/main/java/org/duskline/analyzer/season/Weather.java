package org.duskline.analyzer.season;

import java.time.Instant;
import java.util.List;
import org.shredzone.commons.suncalc.SunPosition;

/**
 * The weather that all traps of a line share, on a ten-minute grid: sun, clouds, temperature, rain, wind, humidity, and
 * from them how well bees fly. The laws are invented; their outcome is a spring as a keeper knows it.
 */
final class Weather {
    private static final double DAY = 86400;
    private static final double HOUR = 3600;
    /** A rain that still falls began at most this many rains ago. */
    private static final int LOOK_BACK = 6;

    private final World world;
    private final Fair fair;
    private final List<Shower> showers;
    private final Curve sunHeight;
    private final Curve cloud;
    private final Curve celsius;
    private final Curve wind;
    private final Curve humidity;
    private final Curve flight;

    Weather(World world, Dice dice, double storminess) {
        this(world, dice, storminess, Fair.asDrawn());
    }

    Weather(World world, Dice dice, double storminess, Fair fair) {
        this.world = world;
        this.fair = fair;
        this.showers = fair.over(Shower.draw(world, dice.fork("rain"), storminess));
        double from = world.startSecond() - 2 * DAY;
        double until = world.endSecond() + DAY;
        sunHeight = Curve.fill(
                from,
                until,
                t -> SunPosition.compute()
                        .on(Instant.ofEpochSecond((long) t))
                        .at(world.latitude(), world.longitude())
                        .execute()
                        .getAltitude());
        cloud = clouds(dice.fork("cloud"), from, until);
        celsius = temperature(dice.fork("temperature"), from, until);
        wind = winds(dice.fork("wind"), from, until, storminess);
        humidity = moisture(dice.fork("humidity"), from, until);
        flight = Curve.fill(from, until, this::flightNow);
    }

    private Curve clouds(Dice dice, double from, double until) {
        Wandering slow = new Wandering(dice, Curve.STEP, 14 * HOUR);
        Wandering quick = new Wandering(dice, Curve.STEP, 0.7 * HOUR);
        return Curve.fill(from, until, t -> {
            double wet = rainAround(t);
            double logit = world.climate().cloudiness()
                    + 1.7 * slow.next()
                    + 0.6 * quick.next()
                    + 4 * Math.min(1, wet * 2)
                    - 3 * fair.share(t);
            return 1 / (1 + Math.exp(-logit));
        });
    }

    private Curve temperature(Dice dice, double from, double until) {
        Wandering airMass = new Wandering(dice, Curve.STEP, 60 * HOUR);
        Climate climate = world.climate();
        double[] chill = {0};
        return Curve.fill(from, until, t -> {
            double season = Math.cos(2 * Math.PI * world.daysFromHeat(t) / 365.2425);
            double hour = Math.cos(2 * Math.PI * (world.solarHour(t) - 14.8) / 24);
            double clear = 1 - 0.7 * cloud.at(t);
            chill[0] += (rain(t) > 0.3 ? 2.5 - chill[0] : -chill[0]) * Curve.STEP / (1.5 * HOUR);
            return climate.yearMeanCelsius()
                    + climate.yearSwingCelsius() * season
                    + 2.8 * airMass.next() * (1 - fair.share(t))
                    + 3 * fair.share(t)
                    + climate.daySwingCelsius() * clear * (hour + 0.25)
                    - chill[0];
        });
    }

    private Curve winds(Dice dice, double from, double until, double storminess) {
        Wandering slow = new Wandering(dice, Curve.STEP, 10 * HOUR);
        Wandering quick = new Wandering(dice, Curve.STEP, 0.5 * HOUR);
        return Curve.fill(from, until, t -> {
            double hour = 0.55 + 0.45 * Math.exp(-0.5 * Math.pow((world.solarHour(t) - 14) / 4, 2));
            double squall = Math.min(4, rain(t) * 0.35) * Math.sqrt(storminess);
            return world.climate().windMetresPerSecond()
                            * Math.exp(0.6 * slow.next() + 0.2 * quick.next())
                            * hour
                            * (1 - 0.4 * fair.share(t))
                    + squall;
        });
    }

    private Curve moisture(Dice dice, double from, double until) {
        Wandering airMass = new Wandering(dice, Curve.STEP, 40 * HOUR);
        Climate climate = world.climate();
        return Curve.fill(from, until, t -> {
            double season = Math.cos(2 * Math.PI * world.daysFromHeat(t) / 365.2425);
            double dewPoint = climate.yearMeanCelsius()
                    + climate.yearSwingCelsius() * season
                    - climate.dewGapCelsius()
                    + 2.5 * airMass.next();
            // Five per cent a degree of dew-point gap: a common rule of thumb (memory).
            double humid = 100 - 5 * (celsius.at(t) - dewPoint) + 20 * Math.min(1, rainAround(t));
            return Math.max(22, Math.min(99, humid));
        });
    }

    /** Above 12.8 degrees, below 24 km/h of wind, in light, without rain (R30); temperature and sun lead (R31). */
    private double flightNow(double t) {
        double warm = ramp(celsius.at(t), 10.5, 17);
        double calm = 1 - ramp(wind.at(t), 4.5, 7.5);
        double light = ramp(sunHeight.at(t), 0, 14);
        double bright = 0.55 + 0.45 * (1 - cloud.at(t));
        double dry = rain(t) > 0.15 ? 0.02 : 1;
        return warm * calm * light * bright * dry;
    }

    static double ramp(double value, double from, double to) {
        return Math.max(0, Math.min(1, (value - from) / (to - from)));
    }

    /** Rain, mm/h. */
    double rain(double t) {
        double sum = 0;
        int last = Shower.lastBefore(showers, t);
        for (int i = last; i >= 0 && i > last - LOOK_BACK; i--) {
            sum += showers.get(i).at(t);
        }
        return sum;
    }

    private double rainAround(double t) {
        return 0.4 * rain(t - HOUR) + rain(t) + 0.6 * rain(t + HOUR);
    }

    List<Shower> showers() {
        return showers;
    }

    double sunHeight(double t) {
        return sunHeight.at(t);
    }

    /** Direct sun, 0 to 1. */
    double sunshine(double t) {
        return ramp(sunHeight.at(t), 2, 40) * (1 - cloud.at(t));
    }

    double cloud(double t) {
        return cloud.at(t);
    }

    double celsius(double t) {
        return celsius.at(t);
    }

    /** Mean wind, m/s. */
    double wind(double t) {
        return wind.at(t);
    }

    double humidity(double t) {
        return humidity.at(t);
    }

    /** How well bees fly, 0 to 1. */
    double flight(double t) {
        return flight.at(t);
    }

    /** The first sunset after a moment of daylight, or that moment plus 12 hours where the sun stays up. */
    double sunset(double t) {
        for (double s = t; s < t + 20 * HOUR; s += 120) {
            if (sunHeight.at(s) < -0.833) {
                return s;
            }
        }
        return t + 12 * HOUR;
    }
}
