package wallplate.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/** The slips that sheets were drawn with, told from the values really drawn. */
class TruthSlipsTest {

    private static final Set<String> SECTION_SIZES = Set.of("thickness", "depth", "width");

    @Test
    void namesTheSlipsThatSheetsWereDrawnWith() throws IOException {
        int known = 0;
        List<String> missed = new ArrayList<>();
        for (TruthSheets.Sheet sheet : TruthSheets.readable()) {
            Slips slips = slips(sheet);
            for (JsonNode slip : sheet.truth().get("slips")) {
                String key = slip.get("key").asString();
                JsonNode drawn = sheet.truth().get("truth").get(key);
                if (drawn == null || !drawn.get("state").asString().equals("measured")) {
                    continue;
                }
                known++;
                List<String> named = named(slips, key, drawn.get("value"));
                if (!named.contains(slip.get("slip").asString())) {
                    missed.add("%s %s is %s, named %s".formatted(sheet.name(), slip, drawn.get("value"), named));
                }
            }
        }
        assertThat(known).isGreaterThan(80);
        assertThat(missed).as(String.join("\n", missed)).hasSizeLessThan(known * 15 / 100);
    }

    @Test
    void seldomNamesASlipThatWasNotMade() throws IOException {
        int values = 0;
        List<String> wrong = new ArrayList<>();
        for (TruthSheets.Sheet sheet : TruthSheets.readable()) {
            Slips slips = slips(sheet);
            Set<String> slipped = new HashSet<>();
            sheet.truth()
                    .get("slips")
                    .forEach(slip -> slipped.add(slip.get("key").asString()));
            if (slipped.contains("drawing")) {
                continue;
            }
            for (Map.Entry<String, JsonNode> drawn : sheet.truth().get("truth").properties()) {
                if (slipped.contains(drawn.getKey()) || !drawn.getValue().has("value")) {
                    continue;
                }
                values++;
                List<String> named =
                        named(slips, drawn.getKey(), drawn.getValue().get("value"));
                if (!named.isEmpty()) {
                    wrong.add("%s %s %s named %s".formatted(sheet.name(), drawn.getKey(), drawn.getValue(), named));
                }
            }
        }
        assertThat(values).isGreaterThan(800);
        assertThat(wrong).as(String.join("\n", wrong)).hasSizeLessThan(values * 2 / 100);
    }

    private static Slips slips(TruthSheets.Sheet sheet) {
        Map<String, Double> drawn = new HashMap<>();
        sheet.truth().get("truth").properties().forEach(value -> {
            if (value.getValue().has("value") && value.getValue().get("value").isNumber()) {
                drawn.put(value.getKey(), value.getValue().get("value").asDouble());
            }
        });
        return Slips.of(Solver.solve(sheet.task()), drawn);
    }

    private static List<String> named(Slips slips, String key, JsonNode value) {
        if (value.isString()) {
            return slips.fitting(key, value.asString()).map(SlipFit::slip).stream()
                    .toList();
        }
        if (value.isBoolean()) {
            return slips.fitting(key, value.asBoolean()).map(SlipFit::slip).stream()
                    .toList();
        }
        double tolerance = SECTION_SIZES.contains(key.substring(key.indexOf('.') + 1)) ? 0.5 : 1;
        return slips.fitting(key, value.asDouble(), 0.02, tolerance).stream()
                .map(SlipFit::slip)
                .toList();
    }
}
