package org.duskline.analyzer.prove;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Rectangle2D;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.duskline.analyzer.season.TrapTruth;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** Whoever chooses an odds threshold reads the picture of what each one buys. */
class ProofPicturesTest {
    private static final double LETTER_HEIGHT = 13;
    private static final double[] ODDS = {2, 5, 10, 20, 50, 100, 300};

    private final Map<Double, List<JudgedTrap>> traps = new TreeMap<>();

    /** A thousand trap-days with a hundred swarms heard. */
    private void watched(String fitted, double odds, int falseMoveIns, int missed) {
        List<JudgedArrival> arrivals = new ArrayList<>(Collections.nCopies(missed, swarm(Double.NaN)));
        arrivals.addAll(Collections.nCopies(100 - missed, swarm(60)));
        Map<String, Integer> falseOnes = falseMoveIns == 0 ? Map.of() : Map.of("rain", falseMoveIns);
        traps.computeIfAbsent(odds, o -> new ArrayList<>())
                .add(new JudgedTrap(
                        "typical", fitted, 60, 1000, arrivals, falseOnes, 0, 0, 0, Map.of(), 0, 0, 0, 0, 0, 0,
                        List.of()));
    }

    private static JudgedArrival swarm(double raised) {
        TrapTruth.Arrival truth =
                new TrapTruth.Arrival(-9, 0, 1, 2, 1.4, 5, 3, 20, false, "straight", Double.NaN, 60, Double.NaN);
        return new JudgedArrival(truth, raised, 0.9, 0, Double.NaN, null);
    }

    private Element picture() throws Exception {
        Map<Double, Figures> byOdds = new TreeMap<>();
        traps.forEach((odds, of) -> byOdds.put(odds, new Figures(of)));
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(ProofPictures.tradeOff(byOdds))))
                .getDocumentElement();
    }

    private static Stream<Element> each(Element picture, String kind) {
        NodeList found = picture.getElementsByTagName(kind);
        return IntStream.range(0, found.getLength()).mapToObj(i -> (Element) found.item(i));
    }

    private static List<String> thresholds(Element picture) {
        return each(picture, "text")
                .map(Element::getTextContent)
                .filter(words -> words.endsWith(" : 1"))
                .toList();
    }

    private static Element words(Element picture, String words) {
        return each(picture, "text")
                .filter(t -> t.getTextContent().equals(words))
                .findFirst()
                .orElseThrow();
    }

    private static double number(Element of, String attribute) {
        return Double.parseDouble(of.getAttribute(attribute));
    }

    private static Rectangle2D box(Element text) {
        double width = 0.6 * LETTER_HEIGHT * text.getTextContent().length();
        if (text.hasAttribute("transform")) {
            String[] middle = text.getAttribute("transform").split("[( )]");
            return new Rectangle2D.Double(
                    Double.parseDouble(middle[1]) - 0.8 * LETTER_HEIGHT,
                    Double.parseDouble(middle[2]) - width / 2,
                    LETTER_HEIGHT,
                    width);
        }
        double before = switch (text.getAttribute("text-anchor")) {
            case "end" -> width;
            case "middle" -> width / 2;
            default -> 0;
        };
        return new Rectangle2D.Double(
                number(text, "x") - before, number(text, "y") - 0.8 * LETTER_HEIGHT, width, LETTER_HEIGHT);
    }

    private static void assertReadable(Element picture) {
        String[] size = picture.getAttribute("viewBox").split(" ");
        Rectangle2D paper = new Rectangle2D.Double(0, 0, Double.parseDouble(size[2]), Double.parseDouble(size[3]));
        List<Element> texts = each(picture, "text").toList();
        for (int i = 0; i < texts.size(); i++) {
            String words = texts.get(i).getTextContent();
            assertTrue(paper.contains(box(texts.get(i))), words + " leaves the picture");
            for (Element other : texts.subList(0, i)) {
                assertFalse(box(texts.get(i)).intersects(box(other)), words + " lies upon " + other.getTextContent());
            }
        }
    }

    @Test
    void thresholds_that_buy_the_same_share_one_mark_that_names_them() throws Exception {
        for (double odds : ODDS) {
            watched("scale", odds, odds < 10 ? 40 : 3, odds < 10 ? 1 : 4);
        }
        Element picture = picture();
        assertEquals(List.of("2 to 5 : 1", "10 to 300 : 1"), thresholds(picture));
        assertEquals(2, each(picture, "circle").count());
        assertReadable(picture);
    }

    @Test
    void a_threshold_that_buys_something_else_is_not_counted_into_the_span_around_it() throws Exception {
        for (double odds : ODDS) {
            watched("scale", odds, 3, odds == 5 ? 12 : 4);
        }
        assertEquals(List.of("2, 10 to 300 : 1", "5 : 1"), thresholds(picture()));
    }

    @Test
    void fittings_that_fare_alike_are_each_told_in_the_colour_of_their_fitting() throws Exception {
        for (double odds : ODDS) {
            for (String fitted : List.of("both", "scale", "counter")) {
                watched(fitted, odds, 0, 0);
            }
        }
        Element picture = picture();
        assertEquals(Collections.nCopies(3, "2 to 300 : 1"), thresholds(picture));
        assertEquals(
                3,
                each(picture, "circle").map(c -> c.getAttribute("r")).distinct().count());
        List<String> colours = each(picture, "text")
                .filter(t -> t.getTextContent().endsWith(" : 1"))
                .map(t -> t.getAttribute("fill"))
                .toList();
        assertEquals(
                Stream.of("both", "scale", "counter")
                        .map(fitted -> words(picture, fitted).getAttribute("fill"))
                        .toList(),
                colours);
        assertReadable(picture);
    }

    @Test
    void a_fitting_that_never_told_a_false_swarm_stands_where_none_was_seen() throws Exception {
        watched("both", 10, 0, 3);
        Element picture = picture();
        double at = number(each(picture, "circle").findFirst().orElseThrow(), "cx");
        assertEquals(number(words(picture, "none seen"), "x"), at);
        assertTrue(number(words(picture, "0.01"), "x") > at);
        assertReadable(picture);
    }

    @Test
    void thresholds_close_together_can_all_be_read() throws Exception {
        for (int i = 0; i < ODDS.length; i++) {
            watched("both", ODDS[i], 6 - i, i / 3);
            watched("scale", ODDS[i], 9 - i, 1);
            watched("counter", ODDS[i], 10 * (20 - 2 * i), 19 + i);
        }
        Element picture = picture();
        assertEquals(each(picture, "circle").count(), thresholds(picture).size());
        assertReadable(picture);
    }

    @Test
    void thresholds_beyond_every_end_of_the_picture_can_be_read() throws Exception {
        for (int i = 0; i < ODDS.length; i++) {
            watched("both", ODDS[i], 500 - 60 * i, 90 - i);
            watched("scale", ODDS[i], 500, 0);
            watched("counter", ODDS[i], 0, 100);
        }
        Element picture = picture();
        assertEquals(each(picture, "circle").count(), thresholds(picture).size());
        assertReadable(picture);
    }
}
