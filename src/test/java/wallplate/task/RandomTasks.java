package wallplate.task;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;

/** Random tasks that are accepted, the same for the same seed: sizes over wide ranges, parts left out at random. */
public final class RandomTasks {

    private static final int TRIALS = 1000;

    private final Random random;

    private RandomTasks(long seed) {
        this.random = new Random(seed);
    }

    public static DrawingTask eavesSection(long seed) {
        return new RandomTasks(seed).accepted(false);
    }

    public static DrawingTask leanTo(long seed) {
        return new RandomTasks(seed).accepted(true);
    }

    /** A task of which every size is the smallest or the largest that is accepted, at one of the oddest scales. */
    public static DrawingTask atTheEndsOfItsRanges(DetailSchema detail, long seed) {
        RandomTasks tasks = new RandomTasks(seed);
        for (int trial = 0; trial < 50 * TRIALS; trial++) {
            if (TaskFile.read(tasks.endsOf(detail), Map.of()) instanceof TaskReading.Accepted accepted) {
                return accepted.task();
            }
        }
        throw new AssertionError("no odd task was accepted");
    }

    private Map<String, String> endsOf(DetailSchema detail) {
        Map<String, String> fields = new HashMap<>(Map.of(
                "id",
                "odd",
                "title",
                "An odd roof",
                "detail",
                detail.id(),
                "eaves",
                "left",
                "sheet.size",
                "A4",
                "sheet.orientation",
                "portrait"));
        fields.put("scale", "1:" + oneOf(1, 20, 1000));
        for (PartSchema part : detail.parts()) {
            if (!part.optional() || random.nextBoolean()) {
                part.keys().forEach(key -> fields.put(key.key(), endOf(key)));
            }
        }
        return fields;
    }

    private String endOf(SizeKey key) {
        if (key instanceof SizeKey.Quantity quantity) {
            return PlainNumber.text(random.nextBoolean() ? quantity.lowest() : quantity.highest());
        }
        return key instanceof SizeKey.Choice choice
                ? choice.options().get(random.nextInt(choice.options().size())).word()
                : key.example();
    }

    private DrawingTask accepted(boolean leanTo) {
        for (int trial = 0; trial < TRIALS; trial++) {
            if (TaskFile.read(yaml(leanTo)) instanceof TaskReading.Accepted accepted) {
                return accepted.task();
            }
        }
        throw new AssertionError("no random task was accepted");
    }

    private String yaml(boolean leanTo) {
        List<String> lines = new ArrayList<>();
        lines.add("id: random");
        lines.add("title: A random roof");
        lines.add("detail: " + (leanTo ? "mono-pitch-section" : "eaves-section"));
        lines.add("scale: \"1:%d\"".formatted(oneOf(5, 10, 20, 25, 50, 100)));
        lines.add("eaves: " + (random.nextBoolean() ? "left" : "right"));
        lines.add("pitch: " + size(leanTo ? 3 : 8, leanTo ? 35 : 60));
        lines.add(
                "wall: {thickness: %s, plate-flush: %s}".formatted(size(110, 450), oneOf("inner", "outer", "centre")));
        lines.add("wall-plate: {width: %s, depth: %s}".formatted(size(38, 250), size(38, 120)));
        if (leanTo) {
            lines.add("high-wall: {clear-span: %s, thickness: %s}".formatted(size(800, 5000), size(110, 450)));
            lines.add("high-plate: {width: %s, depth: %s}".formatted(size(38, 110), size(38, 120)));
        }
        lines.add("rafter: {depth: %s, overhang: %s}".formatted(size(75, 300), size(50, 900)));
        lines.add("support: {name: purlin, width: %s, depth: %s, spacing: %s}"
                .formatted(size(25, 100), size(25, 150), size(150, 1500)));
        lines.add("covering: {name: sheeting, thickness: %s, projection: %s}".formatted(size(5, 100), size(0, 150)));
        optional(lines, "fascia: {thickness: %s, depth: %s}".formatted(size(12, 50), size(100, 350)));
        optional(lines, "gutter: {width: %s, depth: %s}".formatted(size(75, 200), size(50, 200)));
        optional(lines, "barge-board: {depth: %s, clearance: %s}".formatted(size(150, 500), size(0, 80)));
        if (!leanTo) {
            optional(lines, "tie-beam: {depth: %s}".formatted(size(75, 300)));
            optional(
                    lines,
                    "ceiling: {board: %s, brander: {width: %s, depth: %s, spacing: %s}}"
                            .formatted(size(6, 40), size(25, 75), size(25, 75), size(250, 700)));
            optional(
                    lines,
                    "posts: {width: %s, equal-spaces: %d, span: %s, set-out-from: %s}"
                            .formatted(
                                    size(50, 150),
                                    2 + random.nextInt(7),
                                    size(3000, 12000),
                                    oneOf("wall-centre", "outer-face")));
            lines.add("break-line: {inside: %s}".formatted(size(600, 4000)));
        }
        lines.add("sheet: {size: %s, orientation: %s}"
                .formatted(oneOf("A4", "A3", "A2"), oneOf("landscape", "portrait")));
        return String.join("\n", lines) + "\n";
    }

    private void optional(List<String> lines, String line) {
        if (random.nextInt(4) > 0) {
            lines.add(line);
        }
    }

    private String size(double lowest, double highest) {
        double value = lowest + random.nextDouble() * (highest - lowest);
        return random.nextBoolean()
                ? String.format(Locale.ROOT, "%.0f", value)
                : String.format(Locale.ROOT, "%.1f", value);
    }

    @SafeVarargs
    private <T> T oneOf(T... choices) {
        return choices[random.nextInt(choices.length)];
    }
}
