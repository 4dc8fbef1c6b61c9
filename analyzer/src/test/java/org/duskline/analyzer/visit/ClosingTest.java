package org.duskline.analyzer.visit;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

class ClosingTest {
    @Test
    void a_trap_stays_closed_until_it_is_opened_or_emptied() {
        List<Visit> visits = List.of(
                visit(VisitKind.COLLECTED, "21:40"),
                visit(VisitKind.CLOSED, "20:10"),
                visit(VisitKind.LOOKED, "20:30"),
                visit(VisitKind.CLOSED, "20:45"));
        assertThat(Closing.of(visits)).singleElement().satisfies(closing -> {
            assertThat(closing.from()).isEqualTo(time("20:10"));
            assertThat(closing.until()).isEqualTo(time("21:40"));
        });
        assertThat(Closing.standing(visits)).isEmpty();
    }

    @Test
    void one_that_was_opened_because_of_the_heat_can_be_closed_again() {
        List<Visit> visits = List.of(
                visit(VisitKind.CLOSED, "06:10"), visit(VisitKind.OPENED, "09:30"), visit(VisitKind.CLOSED, "21:00"));
        assertThat(Closing.of(visits)).hasSize(2);
        assertThat(Closing.standing(visits).orElseThrow().from()).isEqualTo(time("21:00"));
    }

    @Test
    void a_trap_that_nobody_closed_is_open() {
        assertThat(Closing.standing(List.of(visit(VisitKind.SET, "10:00"), visit(VisitKind.BAITED, "10:05"))))
                .isEmpty();
    }

    private static Visit visit(VisitKind kind, String hour) {
        return Visit.of("Alder Bend", kind, time(hour), "Hedda");
    }

    private static Instant time(String hour) {
        return Instant.parse("2031-05-12T" + hour + ":00Z");
    }
}
