package wallplate.accuracy;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;

/**
 * What is known of a captured sheet, from its truth file.
 *
 * @param hopeless why the sheet must be refused; empty for a sheet that can be read
 * @param condition the kind of capture and its resolution, such as {@code scan-300} or {@code photo}
 * @param expected exact sizes on paper by key
 * @param keys the truth of each key that is asked for
 * @param lines every line as drawn, in sheet millimetres
 * @param toPixels from sheet millimetres to pixels of the picture as handed in
 */
record TruthSheet(
        String name,
        Optional<String> hopeless,
        String condition,
        Map<String, Double> expected,
        Map<String, KeyTruth> keys,
        Map<String, Segment> lines,
        JsonNode toPixels) {

    /**
     * The truth of one key.
     *
     * @param value a Double, an Integer, a Boolean or a String; empty where the part is not drawn
     * @param byBar the same length as the sheet's own bar calibrates it, where there is one
     */
    record KeyTruth(Optional<Object> value, Optional<Double> byBar) {}

    static TruthSheet of(String name, String json) {
        JsonNode root = JsonMapper.shared().readTree(json);
        JsonNode condition = root.get("condition");
        String kind = condition.get("kind").asString();
        JsonNode hopeless = root.get("hopeless");
        Map<String, Double> expected = new LinkedHashMap<>();
        root.get("expected").properties().forEach(entry -> expected.put(entry.getKey(), entry.getValue().asDouble()));
        Map<String, KeyTruth> keys = new LinkedHashMap<>();
        root.get("truth").properties().forEach(entry -> keys.put(entry.getKey(), keyTruth(entry.getKey(), entry.getValue())));
        Map<String, Segment> lines = new LinkedHashMap<>();
        root.get("lines").properties().forEach(entry -> lines.put(entry.getKey(), segment(entry.getValue())));
        return new TruthSheet(
                name,
                hopeless.isNull() ? Optional.empty() : Optional.of(hopeless.asString()),
                condition.has("dpi") ? kind + "-" + condition.get("dpi").asInt() : kind,
                expected,
                keys,
                lines,
                root.get("toPixels"));
    }

    private static KeyTruth keyTruth(String key, JsonNode node) {
        if (node.get("state").asString().equals("absent")) {
            return new KeyTruth(Optional.empty(), Optional.empty());
        }
        JsonNode value = node.get("value");
        JsonNode byBar = node.get("valueByBar");
        return new KeyTruth(
                Optional.of(plain(key, value)), byBar == null ? Optional.empty() : Optional.of(byBar.asDouble()));
    }

    private static Object plain(String key, JsonNode value) {
        if (value.isBoolean()) {
            return value.asBoolean();
        }
        if (value.isString()) {
            return value.asString();
        }
        return key.endsWith(".count") ? (Object) value.asInt() : (Object) value.asDouble();
    }

    private static Segment segment(JsonNode ends) {
        return Segment.between(
                ends.get(0).asDouble(), ends.get(1).asDouble(), ends.get(2).asDouble(), ends.get(3).asDouble());
    }

    /** Where a place on the sheet lies in the picture as handed in. */
    Point inPixels(Point place) {
        if (toPixels.has("affine")) {
            JsonNode rows = toPixels.get("affine");
            return new Point(row(rows.get(0), place), row(rows.get(1), place));
        }
        JsonNode rows = toPixels.get("homography");
        double depth = row(rows.get(2), place);
        Point flat = new Point(row(rows.get(0), place) / depth, row(rows.get(1), place) / depth);
        JsonNode radial = toPixels.get("radial");
        Point centre = new Point(radial.get("cx").asDouble(), radial.get("cy").asDouble());
        double reach = flat.distanceTo(centre) / radial.get("rc").asDouble();
        return centre.plus(flat.minus(centre).times(1 + radial.get("k1").asDouble() * reach * reach));
    }

    private static double row(JsonNode row, Point place) {
        return row.get(0).asDouble() * place.x() + row.get(1).asDouble() * place.y() + row.get(2).asDouble();
    }
}
