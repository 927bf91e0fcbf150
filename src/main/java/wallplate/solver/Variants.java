package wallplate.solver;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import wallplate.task.Details;
import wallplate.task.DrawingTask;
import wallplate.task.SizeKey;
import wallplate.task.Sizes;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/**
 * Different but equally hard versions of a task.
 *
 * <p>Equally hard means: the same parts and choices; each size divides by the scale as easily as it did (to whole
 * millimetres, to halves, or not); as many supports, branders and posts give or take one; nothing unusual in the brief
 * that was not in the first one. The same seed gives the same variants.
 */
public final class Variants {

    /** How far a size may be changed where no ranges are stated, as a share of it. */
    private static final double USUAL_SHARE = 0.25;

    private static final double USUAL_DEGREES = 8;

    /** Trials for each variant asked before giving up: sizes that pass all checks together are found within a few. */
    private static final int TRIALS = 400;

    private final DrawingTask task;
    private final List<VariantRange> ranges;
    private final ExpectedDrawing first;
    private final Set<String> unusual;

    private Variants(DrawingTask task, List<VariantRange> ranges) {
        this.task = task;
        this.ranges = List.copyOf(ranges);
        this.first = Solver.solve(task);
        this.unusual = adviceKeys(task);
    }

    /** A quarter of each size to either side in steps of 5 mm, eight degrees of the pitch in steps of half a degree. */
    public static List<VariantRange> usualRanges(DrawingTask task) {
        List<VariantRange> ranges = new ArrayList<>();
        Details.of(task).keys().filter(key -> task.sizes().has(key.key())).forEach(key -> {
            if (key instanceof SizeKey.Quantity quantity && quantity.unit() != SizeKey.Unit.NUMBER) {
                ranges.add(usualRange(quantity, task.sizes().number(quantity.key())));
            }
        });
        return ranges;
    }

    private static VariantRange usualRange(SizeKey.Quantity quantity, double size) {
        boolean angle = quantity.unit() == SizeKey.Unit.DEGREES;
        double step = angle ? 0.5 : size < 50 ? 1 : 5;
        double spread = angle ? USUAL_DEGREES : size * USUAL_SHARE;
        double stepsDown = Math.floor((size - Math.max(quantity.lowest(), size - spread)) / step);
        double stepsUp = Math.floor((Math.min(quantity.highest(), size + spread) - size) / step);
        return new VariantRange(quantity.key(), size - stepsDown * step, size + stepsUp * step, step);
    }

    /**
     * Up to so many variants, each different from the task and from the others; fewer where the ranges hold no more.
     * Their ids and titles are the task's with the variant's number behind.
     */
    public static List<DrawingTask> of(DrawingTask task, List<VariantRange> ranges, long seed, int number) {
        return new Variants(task, ranges).draw(new Random(seed), number);
    }

    private List<DrawingTask> draw(Random random, int number) {
        List<DrawingTask> variants = new ArrayList<>();
        Set<Sizes> seen = new HashSet<>(Set.of(task.sizes()));
        for (int trial = 0; trial < TRIALS * number && variants.size() < number; trial++) {
            DrawingTask variant = numbered(variants.size() + 1, sizes(random));
            if (!seen.contains(variant.sizes()) && isAsHard(variant)) {
                seen.add(variant.sizes());
                variants.add(variant);
            }
        }
        return variants;
    }

    private Sizes sizes(Random random) {
        Map<String, Object> sizes = new LinkedHashMap<>(task.sizes().asMap());
        for (VariantRange range : ranges) {
            if (sizes.get(range.key()) instanceof Double size) {
                List<Double> values = asEasy(range, size);
                if (!values.isEmpty()) {
                    sizes.put(range.key(), values.get(random.nextInt(values.size())));
                }
            }
        }
        return Sizes.of(sizes);
    }

    /** The values of the range that divide by the scale as easily as the size itself. */
    private List<Double> asEasy(VariantRange range, double size) {
        List<Double> values = new ArrayList<>();
        boolean angle = range.key().equals("pitch");
        for (int i = 0; i < range.values(); i++) {
            double value = range.value(i);
            double before = angle ? size : task.scale().onPaper(size);
            double after = angle ? value : task.scale().onPaper(value);
            if (Division.of(before) == Division.of(after)) {
                values.add(value);
            }
        }
        return values;
    }

    private enum Division {
        WHOLE,
        HALF,
        OTHER;

        static Division of(double mm) {
            if (Math.abs(mm - Math.rint(mm)) < 1e-9) {
                return WHOLE;
            }
            return Math.abs(mm * 2 - Math.rint(mm * 2)) < 1e-9 ? HALF : OTHER;
        }
    }

    private DrawingTask numbered(int number, Sizes sizes) {
        return new DrawingTask(
                task.id() + "-v" + number,
                task.title() + ", version " + number,
                task.detail(),
                task.scale(),
                task.eaves(),
                sizes,
                task.sheet(),
                task.marking());
    }

    private boolean isAsHard(DrawingTask variant) {
        if (!(TaskFile.read(TaskFile.write(variant)) instanceof TaskReading.Accepted)) {
            return false;
        }
        ExpectedDrawing drawing = Solver.solve(variant);
        List<String> keys = drawing.values().stream().map(Expected::key).toList();
        boolean sameKeys =
                keys.equals(first.values().stream().map(Expected::key).toList());
        return sameKeys && countsAreClose(drawing) && unusual.containsAll(adviceKeys(variant));
    }

    private boolean countsAreClose(ExpectedDrawing drawing) {
        return first.values().stream()
                .filter(Expected.Count.class::isInstance)
                .map(Expected.Count.class::cast)
                .allMatch(count -> drawing.value(count.key())
                        .filter(other -> Math.abs(((Expected.Count) other).number() - count.number()) <= 1)
                        .isPresent());
    }

    private static Set<String> adviceKeys(DrawingTask task) {
        Set<String> keys = new HashSet<>();
        BriefCheck.check(task).forEach(advice -> keys.add(advice.key()));
        return keys;
    }
}
