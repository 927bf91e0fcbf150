package wallplate.solver.brief;

import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import wallplate.solver.Advice;
import wallplate.solver.ExpectedDrawing;
import wallplate.task.PlainNumber;
import wallplate.task.Sizes;

/** The level length of rafter that nothing holds up, against a code's table for common rafters. */
final class RafterSpanRule implements BriefRule {

    private static final String SOURCE =
            "IBC 2018, table 2308.7.2(2): Douglas fir-larch No. 2, 12 inches apart, live load"
                    + " 20 psf, dead load 10 psf, ceiling attached (a foreign code, for comparison only)";

    private static final double INCH = 25.4;

    /** Dressed depth in millimetres (2x4, 2x6, 2x8, 2x10) to the longest level span in millimetres. */
    private static final TreeMap<Double, Double> LONGEST = new TreeMap<>(Map.of(
            89.0, feet(9, 10),
            140.0, feet(15, 6),
            184.0, feet(20, 5),
            235.0, feet(25, 8)));

    private static double feet(int feet, int inches) {
        return (feet * 12 + inches) * INCH;
    }

    @Override
    public Stream<Advice> advice(ExpectedDrawing drawing) {
        Sizes sizes = drawing.task().sizes();
        double depth = sizes.number("rafter.depth");
        Map.Entry<Double, Double> row = LONGEST.floorEntry(depth);
        double span = unsupported(sizes);
        if (span == 0 || (row != null && span <= row.getValue())) {
            return Stream.empty();
        }
        String table = row == null
                ? "the table begins at a depth of 89 mm"
                : "the table goes to %s mm at this depth".formatted(PlainNumber.text(row.getValue(), 0));
        return Stream.of(new Advice(
                "rafter.depth",
                "A rafter %s mm deep spans %s mm level without a post under it; %s."
                        .formatted(PlainNumber.text(depth), PlainNumber.text(span, 0), table),
                SOURCE));
    }

    /** The widest level distance between what holds the rafter up; 0 where the task does not tell. */
    private static double unsupported(Sizes sizes) {
        if (sizes.has("posts.span")) {
            return sizes.number("posts.span") / sizes.number("posts.equal-spaces");
        }
        return sizes.has("high-wall.clear-span") ? sizes.number("high-wall.clear-span") : 0;
    }
}
