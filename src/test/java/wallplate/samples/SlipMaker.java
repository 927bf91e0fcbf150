package wallplate.samples;

import java.util.ArrayList;
import java.util.List;

/** Makes the slips that teachers know, one at a time, each only where it changes the drawing visibly. */
final class SlipMaker {

    private static final List<String> KINDS = List.of(
            "pitch-ten-off", "pitch-misread", "pitch-misread", "pitch-complement", "overhang-along-slope", "overhang-along-slope",
            "depth-plumb", "spacing-level", "spacing-clear", "spacing-clear-brander", "half-size", "double-size",
            "width-depth-swapped", "width-depth-swapped", "wrong-size", "wrong-size", "other-part", "off-the-heel", "mirrored",
            "missing", "missing", "missing", "not-crossed", "not-crossed", "not-hatched", "wrong-scale");

    private final Intention intention;
    private final Chance chance;

    SlipMaker(Intention intention, Chance chance) {
        this.intention = intention;
        this.chance = chance;
    }

    /** Makes up to the given number of slips; a slip that does not fit the task is passed over. */
    void make(int number) {
        List<String> open = new ArrayList<>(KINDS);
        for (int made = 0; made < number && !open.isEmpty(); made++) {
            String kind = chance.oneOf(open);
            open.removeIf(kind::equals);
            if (kind.startsWith("pitch")) {
                open.removeIf(other -> other.startsWith("pitch"));
            }
            make(kind);
        }
    }

    /** Makes one slip; {@code missing}, {@code not-crossed} and {@code width-depth-swapped} may name the part after a colon. */
    void make(String kind) {
        int colon = kind.indexOf(':');
        if (colon >= 0) {
            make(kind.substring(0, colon), kind.substring(colon + 1));
            return;
        }
        double pitch = intention.pitchDegrees();
        switch (kind) {
            case "pitch-ten-off" -> pitch(pitch < 22 ? pitch + 10 : pitch + 10 * chance.sign(), kind);
            case "pitch-misread" -> pitch(pitch + chance.sign() * chance.between(2, 6), kind);
            case "pitch-complement" -> pitch(90 - pitch, kind);
            case "overhang-along-slope" -> scale("rafter.overhang", Math.cos(Math.toRadians(pitch)), kind);
            case "depth-plumb" -> scale("rafter.depth", Math.cos(Math.toRadians(pitch)), kind);
            case "spacing-level" -> scale("support.spacing", 1 / Math.cos(Math.toRadians(pitch)), kind);
            case "spacing-clear" -> widen("support", kind);
            case "spacing-clear-brander" -> widen("brander", "spacing-clear");
            case "half-size" -> scale(aSize(), 0.5, kind);
            case "double-size" -> scale(aSize(), 2, kind);
            case "width-depth-swapped" -> swap(chance.oneOf("support", "gutter", "wall-plate", "brander"));
            case "wrong-size" -> scale(aSize(), chance.oneOf(0.7, 0.8, 1.25, 1.4), kind);
            case "other-part" -> otherPart();
            case "off-the-heel" -> offTheHeel();
            case "mirrored" -> mirror();
            case "missing" -> leaveOut();
            case "not-crossed" -> notCrossed(chance.oneOf("support", "brander", "wall-plate", "all"));
            case "not-hatched" -> notHatched(chance.oneOf("wall", "beam-filling"));
            case "wrong-scale" -> wrongScale();
            default -> throw new IllegalArgumentException("no slip is called " + kind);
        }
    }

    private void make(String kind, String part) {
        switch (kind) {
            case "missing" -> leaveOut(part);
            case "not-crossed" -> notCrossed(part);
            case "width-depth-swapped" -> swap(part);
            default -> throw new IllegalArgumentException("no part can be named for the slip " + kind);
        }
    }

    private void pitch(double degrees, String kind) {
        if (degrees >= 9 && degrees <= 58 && Math.abs(degrees - intention.pitchDegrees()) > 1.8) {
            intention.set("roof.pitch", degrees);
            intention.slip("roof.pitch", kind);
        }
    }

    private String aSize() {
        List<String> keys = List.of(
                "tie-beam.depth", "rafter.depth", "post.width", "wall-plate.width", "wall.thickness", "fascia.depth",
                "gutter.depth", "gutter.width", "support.depth", "rafter.overhang", "post.position", "brander.spacing",
                "barge-board.depth", "covering.projection", "high-wall.thickness", "high-plate.width", "high-plate.depth");
        return chance.oneOf(keys.stream().filter(intention::has).toList());
    }

    private void scale(String key, double factor, String kind) {
        double drawn = intention.size(key) * factor;
        if (drawn < 1.2 || Math.abs(drawn - intention.size(key)) < 0.3 || refuses(key, drawn)) {
            return;
        }
        intention.set(key, drawn);
        intention.slip(key, kind);
    }

    /** Whether the size would make a drawing that cannot be drawn at all. */
    private boolean refuses(String key, double drawn) {
        return switch (key) {
            case "wall-plate.width" -> drawn > intention.size("wall.thickness") - 0.5;
            case "wall.thickness" -> drawn < intention.size("wall-plate.width") + 0.5;
            case "post.position" -> drawn > intention.size("inside") - 10;
            case "high-wall.thickness" -> drawn < intention.size("high-plate.width") + 0.5;
            case "high-plate.width" -> drawn > intention.size("high-wall.thickness") - 0.5;
            case "fascia.depth" -> drawn > 26;
            default -> false;
        };
    }

    private void widen(String part, String kind) {
        String key = part + ".spacing";
        if (intention.has(key)) {
            intention.set(key, intention.size(key) + intention.size(part + ".width"));
            intention.slip(key, kind);
        }
    }

    private void swap(String part) {
        String width = part + ".width";
        String depth = part + ".depth";
        if (!intention.has(width) || Math.abs(intention.size(width) - intention.size(depth)) < 0.4) {
            return;
        }
        double held = intention.size(width);
        if (part.equals("wall-plate") && refuses(width, intention.size(depth))) {
            return;
        }
        intention.set(width, intention.size(depth));
        intention.set(depth, held);
        intention.slip(width, "width-depth-swapped");
        intention.slip(depth, "width-depth-swapped");
    }

    private void otherPart() {
        List<List<String>> pairs = List.of(
                List.of("rafter.depth", "tie-beam.depth"), List.of("tie-beam.depth", "rafter.depth"),
                List.of("wall.thickness", "rafter.depth"), List.of("fascia.depth", "barge-board.depth"),
                List.of("rafter.depth", "support.depth"), List.of("post.width", "rafter.depth"));
        List<String> pair = chance.oneOf(pairs);
        if (pair.stream().allMatch(intention::has)) {
            scale(pair.get(0), intention.size(pair.get(1)) / intention.size(pair.get(0)), "other-part");
        }
    }

    private void offTheHeel() {
        intention.set("rafter.heel-offset", chance.sign() * chance.between(1.4, 4.2));
        intention.slip("rafter.heel-offset", "off-the-heel");
    }

    private void mirror() {
        intention.mirror();
        intention.slip("drawing.eaves", "mirrored");
    }

    private void leaveOut() {
        List<String> parts = List.of(
                "gutter", "gutter", "fascia", "tie-beam", "ceiling", "brander", "posts", "barge-board", "supports-but-the-first");
        String drawn = chance.oneOf(parts);
        String part = drawn.equals("ceiling") && intention.task().isLeanTo() ? "high-plate" : drawn;
        boolean needed = part.equals("tie-beam") && chance.happens(0.5);
        if (!needed && intention.draws(part)) {
            leaveOut(part);
        }
    }

    private void leaveOut(String part) {
        intention.leaveOut(part);
        intention.slip(part.equals("posts") ? "post" : part.startsWith("supports") ? "support" : part, "missing");
    }

    private void notCrossed(String asked) {
        String part = asked.equals("brander") && intention.task().isLeanTo() ? "high-plate" : asked;
        List<String> parts = part.equals("all") ? List.of("support", "brander", "wall-plate") : List.of(part);
        parts.forEach(intention::leaveUncrossed);
        intention.slip(part, "not-crossed");
    }

    private void notHatched(String part) {
        if (part.equals("beam-filling") && !intention.task().asksForBeamFilling()) {
            return;
        }
        intention.leaveUnhatched(part);
        intention.slip(part, "not-hatched");
    }

    private void wrongScale() {
        int asked = intention.task().scale();
        int drawn = asked == 10 ? chance.oneOf(15, 20) : asked == 15 ? 20 : asked == 20 ? chance.oneOf(25, 30) : 30;
        intention.scaleAll((double) asked / drawn);
        intention.slip("drawing", "scale-1:" + drawn);
    }
}
