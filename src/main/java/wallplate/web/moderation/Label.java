package wallplate.web.moderation;

/** A word beside a dot; its place is the left end of its base line. */
record Label(double x, double y, String text) {}
