package wallplate.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import wallplate.sheet.Calibration.Source;
import wallplate.sheet.page.BarFinder.Bar;
import wallplate.sheet.page.LevelDirection;
import wallplate.sheet.page.RoughPage;
import wallplate.sheet.page.RoughPage.Scale;
import wallplate.sheet.page.Stretch;
import wallplate.sheet.page.Turn;
import wallplate.task.SheetFormat;

/**
 * From what a page got its millimetres, how well they are known and what has to be said about them.
 *
 * @param scale true millimetres to a rough millimetre
 */
record PageScale(
        RoughPage rough, SheetFormat format, Turn turn, Stretch stretch, Optional<Bar> bar, LevelDirection level, double scale) {

    /** Two scales of one page may differ by this share before it is said; the eaves page asks for it. */
    private static final double SCALES_DIFFER = 0.015;
    /** How well a learner draws a bar with a ruler and how well its ticks have a centre line, in millimetres. */
    static final double BAR_DRAWN = 0.1;
    /** How well the sides of cut paper are known, in percent: a third of a millimetre in A4. */
    private static final double PAPER_CUT_PERCENT = 0.15;
    /** Two scales agree where they are no farther apart than this many standard deviations of both. */
    private static final double AGREEING_DEVIATIONS = 3;

    Calibration calibration() {
        if (bar.isEmpty()) {
            Source source = rough.scale() == Scale.MARKS ? Source.CORNER_MARKS : Source.PAGE_EDGES;
            return new Calibration(
                    source,
                    Math.max(format.widthMm(), format.heightMm()),
                    withoutBarPercent(),
                    stretch.deviationPercent(),
                    level.deviationDegrees());
        }
        double length = format.referenceBarMm();
        double deviation = Math.hypot(bar.get().deviation() * scale, BAR_DRAWN);
        double doubt = Math.hypot(deviation, disagreementMm(deviation));
        return new Calibration(
                Source.REFERENCE_BAR,
                length,
                100 * doubt / length,
                stretch.deviationPercent(),
                level.deviationDegrees());
    }

    /** Edges and a stated resolution that contradict one another leave half of what lies between them open. */
    private double withoutBarPercent() {
        double edges = rough.scale() == Scale.OPPOSITE_EDGES
                ? Math.hypot(PAPER_CUT_PERCENT, stretch.deviationPercent())
                : PAPER_CUT_PERCENT;
        return rough.isContradicted() ? Math.hypot(edges, 100 * Math.abs(rough.otherMm() - 1) / 2) : edges;
    }

    /**
     * What the bar and the paper leave open between them, as one standard deviation: half of what lies between the two
     * where that is more than both are known to, nothing where they agree or the paper's size says nothing.
     */
    private double disagreementMm(double barDeviationMm) {
        if (!rough.isTrueToSize()) {
            return 0;
        }
        double length = format.referenceBarMm();
        double apart = length * Math.abs(1 / scale - 1);
        double known = Math.hypot(barDeviationMm, length * PAPER_CUT_PERCENT / 100);
        return apart > AGREEING_DEVIATIONS * known ? apart / 2 : 0;
    }

    List<String> warnings() {
        List<String> warnings = new ArrayList<>();
        String other = rough.scale() == Scale.MARKS ? "the printed corner marks" : "the edges of the paper";
        if (bar.isEmpty()) {
            warnings.add(
                    "No reference bar was found; the millimetres were taken from %s instead.".formatted(other));
            if (rough.isContradicted()) {
                warnings.add("By the resolution that the file states the paper is of another size than asked for, so every"
                        + " length is less sure.");
            }
        } else if (Math.abs(scale / byPaper() - 1) > SCALES_DIFFER) {
            warnings.add(String.format(
                    Locale.ROOT,
                    "By %s the reference bar is %.1f mm long and not as long as asked; the millimetres were taken"
                            + " from the bar.",
                    other,
                    format.referenceBarMm() * byPaper() / scale));
        }
        if (isCutOff()) {
            warnings.add("A part of the sheet is not in this picture; what lies there was not judged. Scan the whole"
                    + " sheet if the drawing runs on beyond it.");
        }
        return warnings;
    }

    /** Millimetres to a rough one by the paper's size, and by the bar where the picture does not tell that. */
    private double byPaper() {
        boolean edgesAreTheOther = rough.scale() == Scale.STATED_RESOLUTION && rough.isContradicted();
        return rough.isTrueToSize() ? 1 : edgesAreTheOther ? rough.otherMm() : scale;
    }

    /** Whether the picture shows clearly less than the sheet's width or height. */
    boolean isCutOff() {
        double across = scale * (turn.isLevelAlongX() ? rough.widthMm() : rough.heightMm());
        double up = scale * (turn.isLevelAlongX() ? rough.heightMm() : rough.widthMm());
        return across < RoughPage.WHOLE_SHARE * format.widthMm()
                || up < RoughPage.WHOLE_SHARE * format.heightMm();
    }
}
