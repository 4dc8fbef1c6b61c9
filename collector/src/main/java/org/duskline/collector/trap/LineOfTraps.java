package org.duskline.collector.trap;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * A line as a GeoJSON FeatureCollection of Points (RFC 7946), one a trap, with the properties {@code trap}, {@code node},
 * {@code zone} and {@code fitted}, and where known {@code lanes} and {@code dead-time-ms}.
 *
 * @param places the traps, each with the node that hangs there
 */
public record LineOfTraps(List<Place> places) {
    private static final ObjectMapper JSON = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);
    private static final Pattern NODE = Pattern.compile("[A-Za-z0-9_-]{1,32}");

    /**
     * A trap and what hangs there.
     *
     * @param trap the trap
     * @param node the hardware's own name
     * @param fitted what the node senses there
     * @param counter what its entrance counter is made of; empty where the file does not say
     */
    public record Place(Trap trap, String node, Fitted fitted, Optional<LaneBlock> counter) {
        public Place(Trap trap, String node, Fitted fitted) {
            this(trap, node, fitted, Optional.empty());
        }
    }

    public LineOfTraps {
        places = List.copyOf(places);
    }

    /** The traps alone. */
    public List<Trap> traps() {
        return places.stream().map(Place::trap).toList();
    }

    /** The fittings, each from an instant on and with no end. */
    public List<Fitting> fittingsFrom(Instant from) {
        return places.stream()
                .map(place -> new Fitting(place.node(), place.trap().name(), place.fitted(), from, Instant.MAX))
                .toList();
    }

    /** Reads a file. */
    public static LineOfTraps read(Path file) {
        try {
            return parse(Files.readString(file), file.toString());
        } catch (IOException failed) {
            throw new LineProblem(
                    "The line " + file + " cannot be read: " + failed.getMessage()
                            + ". Check the name, and that it is a text file in UTF-8.",
                    failed);
        }
    }

    /**
     * Reads a text.
     *
     * @param source what to call it in an error
     */
    public static LineOfTraps parse(String text, String source) {
        JsonNode root;
        try {
            root = JSON.readTree(text);
        } catch (JsonProcessingException broken) {
            throw new LineProblem(
                    source + " is not JSON: " + broken.getOriginalMessage() + " in line "
                            + broken.getLocation().getLineNr() + ". Correct it there and try again.",
                    broken);
        }
        if (!root.path("type").asText().equals("FeatureCollection")
                || !root.path("features").isArray()) {
            throw new LineProblem(source + " is not a GeoJSON FeatureCollection. It must begin with"
                    + " {\"type\":\"FeatureCollection\",\"features\":[ and hold one Point a trap.");
        }
        return new LineOfTraps(places(root.path("features"), source));
    }

    private static List<Place> places(JsonNode features, String source) {
        List<Place> places = new ArrayList<>();
        Set<String> traps = new HashSet<>();
        Set<String> nodes = new HashSet<>();
        for (JsonNode feature : features) {
            String where = source + ", feature " + (places.size() + 1);
            Place place = place(feature, where);
            if (!traps.add(place.trap().name())) {
                throw new LineProblem(where + ": the trap \"" + place.trap().name()
                        + "\" stands there twice. Give one of them another name.");
            }
            if (!nodes.add(place.node())) {
                throw new LineProblem(where + ": the node \"" + place.node()
                        + "\" hangs in two traps. Name each node once; a change of trap is entered as a fitting.");
            }
            places.add(place);
        }
        return places;
    }

    private static Place place(JsonNode feature, String where) {
        JsonNode properties = feature.path("properties");
        String name = text(properties, "trap", where);
        String named = where + " (trap \"" + name + "\")";
        JsonNode position = feature.path("geometry").path("coordinates");
        if (!feature.path("geometry").path("type").asText().equals("Point")
                || !position.path(0).isNumber()
                || !position.path(1).isNumber()) {
            throw new LineProblem(
                    named + ": it needs a geometry of type Point with coordinates [LONGITUDE, LATITUDE].");
        }
        String node = text(properties, "node", named);
        if (!NODE.matcher(node).matches()) {
            throw new LineProblem(
                    named + ": \"" + node + "\" is no node name. It takes 1 to 32 of A-Z, a-z, 0-9, _ and -.");
        }
        double latitude = position.path(1).doubleValue();
        double longitude = position.path(0).doubleValue();
        try {
            Trap trap = new Trap(name, latitude, longitude, zone(text(properties, "zone", named), named));
            Fitted fitted = fitted(text(properties, "fitted", named), named);
            return new Place(trap, node, fitted, counter(properties, node, named));
        } catch (IllegalArgumentException wrong) {
            throw new LineProblem(named + ": " + wrong.getMessage(), wrong);
        }
    }

    private static Optional<LaneBlock> counter(JsonNode properties, String node, String where) {
        JsonNode lanes = properties.path("lanes");
        JsonNode deadTime = properties.path("dead-time-ms");
        if (lanes.isMissingNode() && deadTime.isMissingNode()) {
            return Optional.empty();
        }
        if (!lanes.isIntegralNumber() || !(deadTime.isMissingNode() || deadTime.isIntegralNumber())) {
            throw new LineProblem(where + ": lanes and dead-time-ms take whole numbers, and dead-time-ms needs lanes"
                    + " beside it. Leave both out if the counter is not known.");
        }
        Duration blind = deadTime.isMissingNode() ? LaneBlock.USUAL_DEAD_TIME : Duration.ofMillis(deadTime.longValue());
        return Optional.of(new LaneBlock(node, Instant.MIN, lanes.intValue(), blind));
    }

    private static String text(JsonNode properties, String key, String where) {
        JsonNode value = properties.path(key);
        if (!value.isTextual() || value.asText().isBlank()) {
            throw new LineProblem(where + ": the property \"" + key + "\" is missing or not a text. Each trap needs"
                    + " trap, node, zone and fitted.");
        }
        return value.asText();
    }

    private static ZoneId zone(String zone, String where) {
        try {
            return ZoneId.of(zone);
        } catch (DateTimeException unknown) {
            throw new LineProblem(
                    where + ": the time zone \"" + zone + "\" is unknown. Write it like Europe/Vienna.", unknown);
        }
    }

    private static Fitted fitted(String fitted, String where) {
        return switch (fitted) {
            case "both" -> Fitted.BOTH;
            case "counter" -> Fitted.COUNTER;
            case "scale" -> Fitted.SCALE;
            default ->
                throw new LineProblem(where + ": fitted is \"" + fitted + "\"; it takes both, counter or scale.");
        };
    }

    /** The line as GeoJSON text. */
    public String toGeoJson() {
        ObjectNode root = JSON.createObjectNode().put("type", "FeatureCollection");
        ArrayNode features = root.putArray("features");
        for (Place place : places) {
            ObjectNode feature = features.addObject().put("type", "Feature");
            feature.putObject("geometry")
                    .put("type", "Point")
                    .putArray("coordinates")
                    .add(place.trap().longitude())
                    .add(place.trap().latitude());
            ObjectNode properties = feature.putObject("properties")
                    .put("trap", place.trap().name())
                    .put("node", place.node())
                    .put("zone", place.trap().zone().getId())
                    .put("fitted", place.fitted().name().toLowerCase(Locale.ROOT));
            place.counter()
                    .ifPresent(block -> properties
                            .put("lanes", block.lanes())
                            .put("dead-time-ms", block.deadTime().toMillis()));
        }
        try {
            return JSON.writeValueAsString(root) + "\n";
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException("A tree of plain values could not be written.", impossible);
        }
    }
}
