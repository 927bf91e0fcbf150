package wallplate.samples;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * What a learner sets out to draw: the task's sizes on paper, with the slips already made and the sizes rounded and
 * missed as this hand does.
 */
final class Intention {

    private final SampleTask task;
    private final Map<String, Double> sizes = new LinkedHashMap<>();
    private final List<Slip> slips = new ArrayList<>();
    private final Set<String> missing = new TreeSet<>();
    private final Set<String> uncrossed = new TreeSet<>();
    private final Set<String> unhatched = new TreeSet<>();
    private boolean mirrored;

    /** The task drawn without a slip, exactly to size. */
    Intention(SampleTask task) {
        this.task = task;
        task.expected().forEach(sizes::put);
        sizes.remove("covering.gap");
        sizes.remove("ceiling.drop");
        sizes.put("set-in", task.setIn() / task.scale());
        sizes.remove("high-plate.rise");
        if (!task.isLeanTo()) {
            sizes.put("inside", task.onPaper("break-line.inside"));
        }
        if (task.asksFor("ceiling")) {
            sizes.put("ceiling.board", task.onPaper("ceiling.board"));
        }
        List.of("tie-beam", "fascia", "gutter", "barge-board", "ceiling", "posts").stream()
                .filter(part -> !task.asksFor(part))
                .forEach(missing::add);
        if (missing.contains("ceiling")) {
            missing.add("brander");
        }
    }

    SampleTask task() {
        return task;
    }

    double size(String key) {
        Double size = sizes.get(key);
        if (size == null) {
            throw new IllegalArgumentException("nothing is drawn to " + key);
        }
        return size;
    }

    boolean has(String key) {
        return sizes.containsKey(key);
    }

    double pitchDegrees() {
        return size("roof.pitch");
    }

    boolean draws(String part) {
        return !missing.contains(part);
    }

    boolean crosses(String part) {
        return !uncrossed.contains(part);
    }

    boolean hatches(String part) {
        return !unhatched.contains(part);
    }

    boolean eavesOnRight() {
        return task.eavesRight() != mirrored;
    }

    List<Slip> slips() {
        return List.copyOf(slips);
    }

    void set(String key, double value) {
        sizes.put(key, value);
    }

    void scaleAll(double factor) {
        sizes.replaceAll((key, value) -> key.equals("roof.pitch") || key.equals("rafter.heel-offset") ? value : value * factor);
    }

    /** Brings the end of the drawing on the inside nearer, where it would not fit the paper. */
    void narrow(double factor) {
        String key = task.isLeanTo() ? "high-wall.clear-span" : "inside";
        set(key, size(key) * factor);
    }

    void slip(String key, String slip) {
        slips.add(new Slip(key, slip));
    }

    void leaveOut(String part) {
        missing.add(part);
        if (part.equals("ceiling")) {
            missing.add("brander");
        }
        if (part.equals("tie-beam")) {
            missing.add("posts");
        }
    }

    void leaveUncrossed(String part) {
        uncrossed.add(part);
    }

    void leaveUnhatched(String part) {
        unhatched.add(part);
    }

    void mirror() {
        mirrored = true;
    }

    /** Rounds every size as the learner does and misses it by the hand's error. */
    void setOff(Learner learner, Chance chance) {
        sizes.replaceAll((key, value) -> switch (key) {
            case "roof.pitch" -> value + chance.error(0.18 * learner.sizeErrorMm() / 0.18);
            case "rafter.heel-offset" -> value + chance.error(learner.sizeErrorMm() * 0.8);
            case "set-in", "inside", "ceiling.board" -> value;
            default -> drawn(value, learner, chance);
        });
        tellThePlateFromTheWall();
    }

    private void tellThePlateFromTheWall() {
        double room = size("wall.thickness") - size("wall-plate.width");
        String flush = String.valueOf(task.sizes().get("wall.plate-flush"));
        set("set-in", flush.equals("inner") ? Math.max(0, room) : flush.equals("centre") ? Math.max(0, room / 2) : 0);
    }

    private static double drawn(double exact, Learner learner, Chance chance) {
        double step = exact < 1.4 ? Math.min(0.5, learner.roundingMm()) : learner.roundingMm();
        double rounded = step == 0 ? exact : Math.floor(exact / step + 0.5) * step;
        double error = chance.error(learner.sizeErrorMm() * (exact < 3 ? 0.6 : 1));
        return Math.max(0.75, Math.max(rounded, step) + error);
    }
}
