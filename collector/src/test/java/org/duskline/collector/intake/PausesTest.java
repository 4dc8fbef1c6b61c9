package org.duskline.collector.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class PausesTest {
    @Test
    void pauses_grow_to_their_limit_and_start_small_again_after_a_success() {
        Pauses pauses = new Pauses(Duration.ofSeconds(1), Duration.ofSeconds(10), new Random(11));
        for (long limit : new long[] {1, 2, 4, 8, 10, 10, 10}) {
            assertThat(pauses.next()).isBetween(Duration.ofMillis(limit * 500), Duration.ofSeconds(limit));
        }
        pauses.restart();
        assertThat(pauses.next()).isLessThanOrEqualTo(Duration.ofSeconds(1));
    }

    @Test
    void two_programs_do_not_come_back_in_step() {
        Pauses one = new Pauses(Duration.ofSeconds(1), Duration.ofSeconds(10), new Random(1));
        Pauses other = new Pauses(Duration.ofSeconds(1), Duration.ofSeconds(10), new Random(2));
        assertThat(Stream.generate(one::next).limit(5))
                .doesNotContainAnyElementsOf(
                        Stream.generate(other::next).limit(5).toList());
    }
}
