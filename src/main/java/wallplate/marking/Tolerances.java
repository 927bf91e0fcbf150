package wallplate.marking;

import java.util.Set;
import wallplate.solver.Expected;

/**
 * The usual tolerances of a guideline, for criteria that state none of their own.
 *
 * @param lengthMm for lengths in general, millimetres on paper
 * @param thicknessMm for keys that end in thickness, depth or width, millimetres on paper
 * @param angleDegrees for angles
 */
public record Tolerances(double lengthMm, double thicknessMm, double angleDegrees) {

    /** A millimetre, half a millimetre for the sizes of timbers, a degree. */
    public static final Tolerances USUAL = new Tolerances(1.0, 0.5, 1.0);

    /** Rows whose first member may stand anywhere: by where it stands, one more or one fewer fits in. */
    private static final Set<String> ROWS_WITH_FREE_START = Set.of("brander.count");

    /** The usual tolerance for a length, an angle or a count. */
    public Tolerance forValue(Expected expected) {
        if (expected instanceof Expected.Angle) {
            return Tolerance.degrees(angleDegrees);
        }
        if (expected instanceof Expected.Length length) {
            return Tolerance.paperMm(isThickness(length.key()) ? thicknessMm : lengthMm);
        }
        return ROWS_WITH_FREE_START.contains(expected.key()) ? Tolerance.things(1) : Tolerance.exactly();
    }

    private static boolean isThickness(String key) {
        return key.endsWith(".thickness") || key.endsWith(".depth") || key.endsWith(".width");
    }
}
