package wallplate.solver;

/** What one key of the drawing should be, with the working that a learner would write. */
public sealed interface Expected {

    /** The measured key, such as {@code rafter.depth}. */
    String key();

    /** What is measured as a quantity: millimetres on paper, or degrees. */
    sealed interface Size extends Expected {

        /** How far a measured value lies from the one asked for, in the same unit; 0 where it is as asked. */
        double deviation(double measured);
    }

    /**
     * A length on paper.
     *
     * @param realMm the real size
     * @param exactMm the exact paper length
     * @param drawnMm the paper length rounded to the nearest millimetre, halves up
     * @param working such as {@code 900 / 20 = 45 mm}
     */
    record Length(String key, double realMm, double exactMm, double drawnMm, String working) implements Size {

        /** How far a drawn length lies from the interval that the exact and the rounded length span; 0 inside it. */
        @Override
        public double deviation(double measuredMm) {
            double from = Math.min(exactMm, roundedOrExact());
            double to = Math.max(exactMm, roundedOrExact());
            return Math.max(0, Math.max(from - measuredMm, measuredMm - to));
        }

        /** Nothing is drawn as zero: a size that would round to nothing counts as exact only. */
        private double roundedOrExact() {
            return drawnMm == 0 ? exactMm : drawnMm;
        }
    }

    record Angle(String key, double degrees, String working) implements Size {

        @Override
        public double deviation(double measuredDegrees) {
            return Math.abs(measuredDegrees - degrees);
        }
    }

    record Count(String key, int number, String working) implements Expected {}

    record YesNo(String key, boolean yes) implements Expected {}

    /** One of a few words, such as the side of the eaves. */
    record Word(String key, String word) implements Expected {}
}
