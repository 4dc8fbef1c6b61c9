package org.duskline.analyzer.evening;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jgrapht.Graph;
import org.jgrapht.alg.interfaces.HamiltonianCycleAlgorithm;
import org.jgrapht.alg.tour.HeldKarpTSP;
import org.jgrapht.alg.tour.TwoOptHeuristicTSP;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleWeightedGraph;

/**
 * The order of a round from home and back: the shortest (Held and Karp 1962, Journal of the Society for Industrial and
 * Applied Mathematics 10, 196) up to 16 stops, a good one by exchanging pairs of legs beyond.
 */
final class RoundOrder {
    static final int MOST_STOPS_EXACTLY = 16;
    private static final int PASSES = 20;
    private static final long SEED = 1;

    private RoundOrder() {}

    /**
     * Orders places. The first stays first; the way leads back to it.
     *
     * @param distances between each pair of places, the same both ways
     * @return indexes of the places, beginning with 0, each once
     */
    static List<Integer> closed(double[][] distances) {
        int size = distances.length;
        if (size <= 2) {
            return size == 0 ? List.of() : size == 1 ? List.of(0) : List.of(0, 1);
        }
        Graph<Integer, DefaultWeightedEdge> graph = new SimpleWeightedGraph<>(DefaultWeightedEdge.class);
        for (int i = 0; i < size; i++) {
            graph.addVertex(i);
            for (int j = 0; j < i; j++) {
                graph.setEdgeWeight(graph.addEdge(i, j), distances[i][j]);
            }
        }
        HamiltonianCycleAlgorithm<Integer, DefaultWeightedEdge> solver =
                size <= MOST_STOPS_EXACTLY + 1 ? new HeldKarpTSP<>() : new TwoOptHeuristicTSP<>(PASSES, SEED);
        List<Integer> cycle = new ArrayList<>(solver.getTour(graph).getVertexList());
        cycle.remove(cycle.size() - 1);
        Collections.rotate(cycle, -cycle.indexOf(0));
        return List.copyOf(cycle);
    }

    static double[][] distances(List<Place> places) {
        double[][] km = new double[places.size()][places.size()];
        for (int i = 0; i < km.length; i++) {
            for (int j = 0; j < km.length; j++) {
                km[i][j] = i == j ? 0 : places.get(i).kmTo(places.get(j));
            }
        }
        return km;
    }
}
