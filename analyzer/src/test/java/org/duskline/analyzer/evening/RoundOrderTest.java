package org.duskline.analyzer.evening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.duskline.analyzer.stats.CheckFile;
import org.junit.jupiter.api.Test;

/** Rounds of TSPLIB95 with published optima, and small ones by full enumeration. */
class RoundOrderTest {
    @Test
    void published_tours_are_found_at_their_published_length() {
        int met = 0;
        for (JsonNode instance : CheckFile.json("09-tsp.json").get("instances")) {
            if (instance.has("published_optimum")) {
                double[][] distances = matrix(instance.get("distance_matrix"));
                List<Integer> order = RoundOrder.closed(distances);
                visitsAll(order, distances.length);
                assertThat(length(order, distances))
                        .as(instance.get("name").asText())
                        .isCloseTo(instance.get("published_optimum").asDouble(), within(1e-9));
                met++;
            }
        }
        assertThat(met).isEqualTo(2);
    }

    @Test
    void rounds_over_real_distances_are_the_shortest_there_are() {
        int met = 0;
        for (JsonNode instance : CheckFile.json("09-tsp.json").get("instances")) {
            if (!instance.has("computed_optimum_closed_km")) {
                continue;
            }
            List<Place> places = new ArrayList<>();
            instance.get("points")
                    .forEach(point -> places.add(
                            new Place(point.get(0).asDouble(), point.get(1).asDouble())));
            double[][] distances = RoundOrder.distances(places);
            List<Integer> order = RoundOrder.closed(distances);
            visitsAll(order, places.size());
            assertThat(length(order, distances))
                    .as(instance.get("name").asText())
                    .isCloseTo(instance.get("computed_optimum_closed_km").asDouble(), within(1e-6));
            met++;
        }
        assertThat(met).isEqualTo(5);
    }

    @Test
    void a_long_round_is_no_worse_than_going_to_the_nearest_each_time() {
        Random random = new Random(5);
        List<Place> places = IntStream.range(0, 30)
                .mapToObj(i -> new Place(47 + random.nextDouble(), 15 + random.nextDouble()))
                .toList();
        double[][] distances = RoundOrder.distances(places);
        List<Integer> order = RoundOrder.closed(distances);
        visitsAll(order, 30);
        assertThat(length(order, distances)).isLessThanOrEqualTo(length(nearest(distances), distances));
        assertThat(RoundOrder.closed(distances)).isEqualTo(order);
    }

    @Test
    void sixteen_stops_and_home_are_still_solved_exactly() {
        double[][] ring = RoundOrder.distances(IntStream.range(0, 17)
                .mapToObj(i -> i * 7 % 17)
                .map(i -> new Place(Math.cos(2 * Math.PI * i / 17) / 10, Math.sin(2 * Math.PI * i / 17) / 10))
                .toList());
        double side = RoundOrder.distances(List.of(
                new Place(0.1, 0), new Place(Math.cos(2 * Math.PI / 17) / 10, Math.sin(2 * Math.PI / 17) / 10)))[0][1];
        assertThat(length(RoundOrder.closed(ring), ring)).isCloseTo(17 * side, within(1e-4));
    }

    private static List<Integer> nearest(double[][] distances) {
        List<Integer> order = new ArrayList<>(List.of(0));
        while (order.size() < distances.length) {
            double[] from = distances[order.get(order.size() - 1)];
            int next = -1;
            for (int i = 0; i < from.length; i++) {
                if (!order.contains(i) && (next < 0 || from[i] < from[next])) {
                    next = i;
                }
            }
            order.add(next);
        }
        return order;
    }

    private static void visitsAll(List<Integer> order, int size) {
        assertThat(order).hasSize(size).startsWith(0).doesNotHaveDuplicates();
    }

    private static double length(List<Integer> order, double[][] distances) {
        double sum = 0;
        for (int i = 0; i < order.size(); i++) {
            sum += distances[order.get(i)][order.get((i + 1) % order.size())];
        }
        return sum;
    }

    private static double[][] matrix(JsonNode rows) {
        double[][] matrix = new double[rows.size()][];
        for (int i = 0; i < matrix.length; i++) {
            matrix[i] = CheckFile.numbers(rows.get(i));
        }
        return matrix;
    }
}
