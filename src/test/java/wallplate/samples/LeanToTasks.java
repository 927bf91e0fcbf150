package wallplate.samples;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Tasks of invented lean-to buildings with sizes that a builder would find sensible, on paper that they fit. */
final class LeanToTasks {

    private static final List<String> BUILDINGS = List.of(
            "bicycle shelter", "fuel store", "goat pen", "kiosk", "laundry", "mill shed", "net store", "potting shed",
            "pump room", "seed store", "tool lean-to", "wood store");

    private final Chance chance;

    LeanToTasks(long seed) {
        this.chance = new Chance(seed ^ 0x1ea2);
    }

    /** The task with the given number; its building's name carries the number, so that no two share an id. */
    SampleTask draw(int number) {
        while (true) {
            String building = BUILDINGS.get((number * 5 + 2) % BUILDINGS.size());
            int scale = chance.oneOf(10, 15, 20, 20, 25);
            Paper paper = new Paper(chance.oneOf("A4", "A4", "A3"), chance.happens(0.8));
            Map<String, Object> sizes = sizes();
            double span = Math.floor(spanThatFits(sizes, scale, paper) * chance.between(0.75, 1) / 50) * 50;
            if (span < Math.max(600, 35 * scale)) {
                continue;
            }
            sizes.put("high-wall.clear-span", span);
            String id = building.replace(' ', '-') + "-" + (number + 1) + "-lean-to";
            int bar = paper.width() < 230 ? chance.oneOf(80, 100) : chance.oneOf(80, 100, 100, 120, 150);
            String title = "Section through the lean-to roof of the " + building;
            return new SampleTask(id, title, scale, chance.happens(0.5), ordered(sizes), paper, bar);
        }
    }

    private Map<String, Object> sizes() {
        Map<String, Object> sizes = new LinkedHashMap<>();
        sizes.put("pitch", chance.happens(0.6) ? chance.whole(10, 28) : chance.whole(18, 60) / 2.0);
        double wall = chance.oneOf(110, 140, 150, 190, 220, 230, 280);
        sizes.put("wall.thickness", wall);
        sizes.put("wall.plate-flush", chance.oneOf("outer", "inner", "inner", "centre"));
        sizes.put("wall-plate.width", Math.min(wall - 10, chance.oneOf(75, 76, 100, 110, 114)));
        sizes.put("wall-plate.depth", chance.oneOf(38, 50, 63, 75, 76));
        double high = chance.oneOf(110, 140, 150, 190, 220, 230, 280);
        sizes.put("high-wall.thickness", high);
        sizes.put("high-plate.width", Math.min(high - 10, chance.oneOf(75, 76, 100, 110, 114)));
        sizes.put("high-plate.depth", chance.oneOf(38, 50, 63, 75, 76));
        sizes.put("rafter.depth", chance.oneOf(100, 114, 125, 150, 175, 200));
        sizes.put("rafter.overhang", chance.whole(8, 20) * 25);
        sizes.put("support.name", "purlin");
        sizes.put("support.width", chance.oneOf(50, 50, 60, 75));
        sizes.put("support.depth", chance.oneOf(50, 75, 76, 100));
        sizes.put("support.spacing", chance.whole(10, 22) * 50);
        sizes.put("covering.name", chance.oneOf("corrugated sheeting", "profiled sheeting"));
        sizes.put("covering.thickness", chance.oneOf(20, 25, 30, 40, 50));
        sizes.put("covering.projection", chance.whole(6, 16) * 5);
        if (chance.happens(0.9)) {
            sizes.put("fascia.thickness", chance.oneOf(20, 22, 25, 30, 32, 38));
            sizes.put("fascia.depth", chance.whole(7, 11) * 25);
        }
        if (chance.happens(0.85)) {
            sizes.put("gutter.width", chance.oneOf(100, 110, 115, 125, 150));
            sizes.put("gutter.depth", chance.oneOf(75, 80, 100, 120));
        }
        return sizes;
    }

    /** The widest clear span, in real millimetres, that leaves the section room above the reference bar. */
    private static double spanThatFits(Map<String, Object> sizes, int scale, Paper paper) {
        double slope = Math.tan(Math.toRadians(number(sizes, "pitch")));
        double walls = number(sizes, "wall.thickness") + number(sizes, "high-wall.thickness");
        double outside = number(sizes, "rafter.overhang") + number(sizes, "covering.projection") + 60
                + (sizes.containsKey("gutter.width") ? number(sizes, "gutter.width") : 0);
        double acrossPaper = (paper.width() - 45) * scale - outside - walls;
        double build = number(sizes, "rafter.depth") + number(sizes, "support.depth") + number(sizes, "covering.thickness");
        double below = number(sizes, "wall-plate.depth") + 24.0 * scale;
        double upPaper = ((paper.height() - 74) * scale - below - build * 1.25) / slope - walls;
        return Math.min(Math.min(acrossPaper, upPaper), 4200);
    }

    private static double number(Map<String, Object> sizes, String key) {
        return ((Number) sizes.get(key)).doubleValue();
    }

    private static Map<String, Object> ordered(Map<String, Object> sizes) {
        List<String> order = List.of(
                "pitch", "wall.", "wall-plate.", "high-wall.", "high-plate.", "rafter.", "support.", "covering.", "fascia.",
                "gutter.");
        Map<String, Object> sorted = new LinkedHashMap<>();
        order.forEach(part -> sizes.forEach((key, value) -> {
            if (key.startsWith(part)) {
                sorted.put(key, value);
            }
        }));
        return sorted;
    }
}
