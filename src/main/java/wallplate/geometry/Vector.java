package wallplate.geometry;

/** A displacement on paper, in millimetres. */
public record Vector(double x, double y) {

    /** The unit vector at an angle, in degrees anticlockwise from the x axis. */
    public static Vector atDegrees(double angleDegrees) {
        double radians = Math.toRadians(angleDegrees);
        return new Vector(Math.cos(radians), Math.sin(radians));
    }

    public Vector plus(Vector other) {
        return new Vector(x + other.x, y + other.y);
    }

    public Vector minus(Vector other) {
        return new Vector(x - other.x, y - other.y);
    }

    public Vector times(double factor) {
        return new Vector(x * factor, y * factor);
    }

    public Vector negated() {
        return new Vector(-x, -y);
    }

    public double dot(Vector other) {
        return x * other.x + y * other.y;
    }

    /** The z component of the cross product: positive where the other vector lies anticlockwise of this one. */
    public double cross(Vector other) {
        return x * other.y - y * other.x;
    }

    public double length() {
        return Math.hypot(x, y);
    }

    /**
     * This direction with length one.
     *
     * @throws ArithmeticException for the zero vector, which has no direction
     */
    public Vector unit() {
        double length = length();
        if (length == 0) {
            throw new ArithmeticException("the zero vector has no direction");
        }
        return new Vector(x / length, y / length);
    }

    /** This vector turned a quarter turn anticlockwise. */
    public Vector leftNormal() {
        return new Vector(-y, x);
    }

    public Vector rotatedDegrees(double angleDegrees) {
        double radians = Math.toRadians(angleDegrees);
        double cosine = Math.cos(radians);
        double sine = Math.sin(radians);
        return new Vector(x * cosine - y * sine, x * sine + y * cosine);
    }

    /** The direction in degrees anticlockwise from the x axis, in (-180, 180]. */
    public double angleDegrees() {
        return Math.toDegrees(Math.atan2(y, x));
    }

    /** The same vector mirrored in the y axis. */
    public Vector mirrored() {
        return new Vector(-x, y);
    }
}
