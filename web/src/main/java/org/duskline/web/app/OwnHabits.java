package org.duskline.web.app;

import java.time.Duration;
import java.util.Optional;
import org.duskline.analyzer.closed.ClosedLimits;
import org.duskline.analyzer.evening.Place;
import org.duskline.analyzer.evening.RoundSettings;
import org.duskline.analyzer.upkeep.UpkeepLimits;
import org.duskline.web.page.board.Habits;
import org.duskline.web.settings.Key;
import org.duskline.web.settings.Settings;

/** How the keeper works, as the settings say it. */
final class OwnHabits {
    private static final double SECONDS_A_MINUTE = 60;
    private static final double SECONDS_AN_HOUR = 3600;
    private static final double SECONDS_A_DAY = 86_400;

    private OwnHabits() {}

    static Habits of(Settings settings) {
        Optional<Place> home = settings.home().map(spot -> new Place(spot[0], spot[1]));
        RoundSettings round = new RoundSettings(
                home,
                settings.number(Key.EVENING_SPEED),
                length(settings, Key.EVENING_STOP, SECONDS_A_MINUTE),
                settings.number(Key.EVENING_SURE) / 100);
        UpkeepLimits upkeep = new UpkeepLimits(
                length(settings, Key.UPKEEP_BAIT, SECONDS_A_DAY),
                length(settings, Key.UPKEEP_LOOK, SECONDS_A_DAY),
                length(settings, Key.UPKEEP_BATTERY, SECONDS_A_DAY),
                settings.number(Key.UPKEEP_EMPTY),
                length(settings, Key.UPKEEP_UNHEARD, SECONDS_AN_HOUR));
        return new Habits(
                round,
                upkeep,
                ClosedLimits.USUAL.fetchedWithin(length(settings, Key.EVENING_FETCH, SECONDS_AN_HOUR)),
                length(settings, Key.EVENING_ALARM, SECONDS_A_MINUTE));
    }

    private static Duration length(Settings settings, Key key, double secondsAUnit) {
        return Duration.ofSeconds(Math.round(settings.number(key) * secondsAUnit));
    }
}
