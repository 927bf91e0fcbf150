package wallplate.geometry;

/** Angles in degrees brought into their usual ranges. */
public final class Angles {

    private Angles() {}

    /** A direction without regard to which way it points, in (-90, 90]. */
    public static double inclination(double angleDegrees) {
        double turned = angleDegrees % 180;
        if (turned > 90) {
            return turned - 180;
        }
        return turned <= -90 ? turned + 180 : turned;
    }

    /** The smaller angle between two undirected directions, in [0, 90]. */
    public static double between(double firstDegrees, double secondDegrees) {
        return Math.abs(inclination(firstDegrees - secondDegrees));
    }
}
