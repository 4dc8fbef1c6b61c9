package org.duskline.analyzer.season;

import java.util.ArrayList;
import java.util.List;

/** Invented names for places. */
final class PlaceNames {
    private static final List<String> FIRST = List.of(
            "Bramble", "Candle", "Damson", "Fiddler", "Goose", "Heron", "Inkwell", "Juniper", "Kettle", "Lantern",
            "Magpie", "Nettle", "Otter", "Pepper", "Quill", "Rook", "Saddle", "Thistle", "Velvet", "Weaver");
    private static final List<String> SECOND = List.of(
            "Bank", "Corner", "Dell", "Elbow", "Gap", "Hollow", "Knoll", "Landing", "Orchard", "Patch", "Steps",
            "Stile", "Turn", "Well", "Yard");

    private PlaceNames() {}

    static List<String> draw(Dice dice, int count) {
        List<String> names = new ArrayList<>();
        while (names.size() < count) {
            String name = dice.pick(FIRST) + " " + dice.pick(SECOND);
            int again = 2;
            String free = name;
            while (names.contains(free)) {
                free = name + " " + again++;
            }
            names.add(free);
        }
        return names;
    }
}
