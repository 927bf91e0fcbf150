package wallplate.samples;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Tasks of invented buildings with sizes that a builder would find sensible, on paper that they fit. */
final class RandomTasks {

    private static final List<String> BUILDINGS = List.of(
            "apiary shed", "bakery store", "bicycle shelter", "brick kiln office", "canoe house", "clinic porch",
            "compost house", "dairy room", "drying loft", "farm stall", "fish smokery", "gate lodge", "goat barn",
            "harbour office", "hide store", "hostel laundry", "kiosk", "lamp room", "market hall", "meeting room",
            "milking shed", "net loft", "nursery office", "observatory hut", "orchard store", "pottery", "pump house",
            "reading room", "sail loft", "signal cabin", "tea pavilion", "tool store", "wash house", "weighbridge hut",
            "wool store", "workshop annexe");

    private final Chance chance;

    RandomTasks(long seed) {
        this.chance = new Chance(seed);
    }

    /** The task with the given number; its building's name carries the number, so that no two share an id. */
    SampleTask draw(int number) {
        for (int attempt = 0; ; attempt++) {
            String building = BUILDINGS.get((number * 7 + 3) % BUILDINGS.size());
            Map<String, Object> sizes = sizes(attempt);
            int scale = chance.oneOf(10, 15, 20, 20, 25);
            Paper paper = new Paper(chance.oneOf("A4", "A4", "A3"), chance.happens(0.75));
            double inside = insideThatFits(sizes, scale, paper);
            if (inside < Math.max(1000, 62 * scale)) {
                continue;
            }
            sizes.put("break-line.inside", inside);
            addPosts(sizes, inside);
            String id = building.replace(' ', '-') + "-" + (number + 1) + "-eaves";
            int bar = paper.width() < 230 ? chance.oneOf(80, 100) : chance.oneOf(80, 100, 100, 120, 150);
            String title = "Section through the eaves of the " + building;
            return new SampleTask(id, title, scale, chance.happens(0.5), ordered(sizes), paper, bar);
        }
    }

    private Map<String, Object> sizes(int attempt) {
        Map<String, Object> sizes = new LinkedHashMap<>();
        sizes.put("pitch", chance.happens(0.6) ? chance.whole(15, 42) : chance.whole(30, 80) / 2.0);
        double wall = chance.oneOf(110, 140, 150, 190, 200, 220, 230, 250, 280, 300, 330);
        double plate = Math.min(wall - (chance.happens(0.15) ? 0 : 10), chance.oneOf(75, 76, 100, 110, 114, 120, 150));
        sizes.put("wall.thickness", wall);
        sizes.put("wall.plate-flush", chance.oneOf("outer", "inner", "inner", "centre"));
        sizes.put("wall-plate.width", plate);
        sizes.put("wall-plate.depth", chance.oneOf(38, 40, 50, 63, 75, 76));
        boolean tieBeam = attempt > 40 || chance.happens(0.95);
        if (tieBeam) {
            sizes.put("tie-beam.depth", chance.oneOf(100, 114, 120, 125, 150, 175, 200));
        }
        sizes.put("rafter.depth", chance.oneOf(100, 114, 120, 125, 140, 150, 175, 200));
        sizes.put("rafter.overhang", chance.whole(8, 28) * 25);
        addRoofing(sizes);
        addRainwater(sizes);
        if (tieBeam && chance.happens(0.85)) {
            addCeiling(sizes);
        }
        return sizes;
    }

    private void addRoofing(Map<String, Object> sizes) {
        boolean purlins = chance.happens(0.65);
        sizes.put("support.name", purlins ? "purlin" : "batten");
        sizes.put("support.width", purlins ? chance.oneOf(50, 50, 60, 75) : chance.oneOf(38, 38, 50));
        sizes.put("support.depth", purlins ? chance.oneOf(50, 75, 76, 80, 100) : chance.oneOf(38, 38, 50));
        sizes.put("support.spacing", purlins ? chance.whole(12, 24) * 50 : chance.whole(30, 40) * 10);
        sizes.put("covering.name", purlins
                ? chance.oneOf("corrugated sheeting", "profiled sheeting", "fibre-cement sheeting")
                : chance.oneOf("interlocking tiles", "plain tiles", "slates"));
        sizes.put("covering.thickness", chance.oneOf(20, 25, 30, 35, 40, 50, 60));
        sizes.put("covering.projection", chance.whole(6, 18) * 5);
    }

    private void addRainwater(Map<String, Object> sizes) {
        if (chance.happens(0.92)) {
            sizes.put("fascia.thickness", chance.oneOf(20, 22, 25, 30, 32, 38));
            sizes.put("fascia.depth", chance.whole(7, 12) * 25);
        }
        if (chance.happens(0.87)) {
            sizes.put("gutter.width", chance.oneOf(100, 110, 115, 125, 140, 150));
            sizes.put("gutter.depth", chance.oneOf(75, 80, 90, 100, 120));
            if (chance.happens(0.65)) {
                sizes.put("barge-board.depth", chance.whole(8, 15) * 25);
                sizes.put("barge-board.clearance", chance.whole(3, 12) * 5);
            }
        }
    }

    private void addCeiling(Map<String, Object> sizes) {
        sizes.put("ceiling.board", chance.oneOf(6, 9, 10, 12, 15, 20));
        sizes.put("ceiling.brander.width", chance.oneOf(38, 40, 50, 50));
        sizes.put("ceiling.brander.depth", chance.oneOf(38, 38, 40, 50));
        sizes.put("ceiling.brander.spacing", chance.whole(12, 24) * 25);
    }

    private void addPosts(Map<String, Object> sizes, double inside) {
        double gap = chance.whole(7, 20) * 100;
        if (!sizes.containsKey("tie-beam.depth") || !chance.happens(0.6) || gap > inside - 250) {
            return;
        }
        int spaces = chance.whole(3, 8);
        sizes.put("posts.width", chance.oneOf(75, 76, 100, 100, 120, 150));
        sizes.put("posts.equal-spaces", spaces);
        sizes.put("posts.span", gap * spaces);
        sizes.put("posts.set-out-from", chance.oneOf("wall-centre", "outer-face"));
    }

    /** The furthest break line, in round real millimetres, that leaves the section room above the reference bar. */
    private double insideThatFits(Map<String, Object> sizes, int scale, Paper paper) {
        double slope = Math.tan(Math.toRadians(number(sizes, "pitch")));
        double outside = number(sizes, "rafter.overhang") + number(sizes, "covering.projection") + 60
                + (sizes.containsKey("gutter.width") ? number(sizes, "gutter.width") : 0)
                + (sizes.containsKey("barge-board.depth") ? number(sizes, "barge-board.clearance") : 0);
        double acrossPaper = (paper.width() - 42) * scale - outside;
        double build = number(sizes, "rafter.depth") + number(sizes, "support.depth") + number(sizes, "covering.thickness");
        double below = number(sizes, "wall-plate.depth") + 22.0 * scale;
        double upPaper = ((paper.height() - 72) * scale - below - build * 1.25) / slope;
        double most = Math.min(Math.min(acrossPaper, upPaper), 3600);
        double share = Math.max(0.7, 1 - 0.3 * chance.between(0, 1));
        return Math.floor(most * share / 50) * 50;
    }

    private static double number(Map<String, Object> sizes, String key) {
        return ((Number) sizes.get(key)).doubleValue();
    }

    private static Map<String, Object> ordered(Map<String, Object> sizes) {
        List<String> order = List.of(
                "pitch", "wall.", "wall-plate.", "tie-beam.", "rafter.", "support.", "covering.", "fascia.", "gutter.",
                "barge-board.", "ceiling.", "posts.", "break-line.");
        Map<String, Object> sorted = new LinkedHashMap<>();
        order.forEach(part -> sizes.forEach((key, value) -> {
            if (key.startsWith(part)) {
                sorted.put(key, value);
            }
        }));
        return sorted;
    }
}
