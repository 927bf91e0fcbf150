package wallplate.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurement;

/** Reads result files back, as far as marking them again needs. */
public final class ResultFileReader {

    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private ResultFileReader() {}

    /**
     * Reads a file that {@link ResultFile} wrote.
     *
     * @throws IllegalArgumentException where the text is no result file of this schema
     */
    public static StoredResult read(String json) {
        JsonNode root = parse(json);
        int schema = root.path("schema").asInt(0);
        if (schema != ResultFile.SCHEMA) {
            throw new IllegalArgumentException(
                    "a result file of schema %d was expected, not of %d".formatted(ResultFile.SCHEMA, schema));
        }
        boolean read = root.path("status").asString("").equals("read");
        return new StoredResult(
                root.path("task").asString(""),
                root.path("scan").asString(""),
                root.path("page").asInt(1),
                read ? Optional.of(measured(root.path("measurements"))) : Optional.empty(),
                root.path("guideline").asStringOpt());
    }

    private static JsonNode parse(String json) {
        try {
            return MAPPER.readTree(json);
        } catch (tools.jackson.core.JacksonException broken) {
            throw new IllegalArgumentException("this is not JSON: " + broken.getOriginalMessage(), broken);
        }
    }

    private static MeasuredSheet measured(JsonNode measurements) {
        List<Measurement> all = new ArrayList<>();
        for (JsonNode node : measurements) {
            all.add(new Measurement(node.path("key").asString(""), finding(node), List.of()));
        }
        return new MeasuredSheet(all, Map.of(), Optional.empty());
    }

    private static Finding finding(JsonNode node) {
        String state = node.path("state").asString("");
        return switch (state) {
            case "absent" -> new Finding.Absent();
            case "uncertain" -> new Finding.Uncertain(node.path("reason").asString(""), readings(node));
            case "measured" -> value(node);
            default ->
                throw new IllegalArgumentException(
                        "%s: found state %s; accepted: measured, absent, uncertain".formatted(node.path("key"), state));
        };
    }

    private static List<Double> readings(JsonNode node) {
        List<Double> readings = new ArrayList<>();
        node.path("readings").forEach(reading -> readings.add(reading.asDouble()));
        return readings;
    }

    private static Finding value(JsonNode node) {
        JsonNode value = node.path("value");
        if (node.has("unit")) {
            return new Finding.Quantity(
                    value.asDouble(), node.path("uncertainty").asDouble(0));
        }
        if (value.isBoolean()) {
            return new Finding.YesNo(value.asBoolean());
        }
        return value.isInt() ? new Finding.Count(value.asInt()) : new Finding.Word(value.asString());
    }
}
