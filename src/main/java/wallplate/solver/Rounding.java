package wallplate.solver;

import java.util.List;

/** To what a learner rounds a length on paper before setting it off. */
enum Rounding {
    /** Set off exactly. */
    NONE(0),
    HALF_MILLIMETRES(0.5),
    WHOLE_MILLIMETRES(1);

    /** A size that whole millimetres would change by more than a third is set off to the half one. */
    private static final double SMALLEST_TO_WHOLE_MM = 1.5;

    /** Takes up what decimal sizes are off in binary numbers. */
    private static final double NEARLY = 1e-6;

    private final double stepMm;

    Rounding(double stepMm) {
        this.stepMm = stepMm;
    }

    /** What a size on paper is rounded to; up or down where it lies halfway, for learners do either. Never to nothing. */
    List<Double> of(double sizeMm) {
        double step = Math.abs(sizeMm) < SMALLEST_TO_WHOLE_MM ? Math.min(stepMm, 0.5) : stepMm;
        if (step == 0) {
            return List.of(sizeMm);
        }
        double down = step * Math.floor(sizeMm / step + 0.5 - NEARLY);
        double up = step * Math.floor(sizeMm / step + 0.5 + NEARLY);
        return down == up ? List.of(down == 0 ? sizeMm : down) : List.of(down, up);
    }
}
