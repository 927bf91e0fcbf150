package wallplate.report.pdf;

import java.awt.Color;

/** A way to set text. */
record Type(boolean bold, double sizeMm, Color colour) {

    static final Type TITLE = new Type(true, 5.4, Ink.GRAPHITE);
    static final Type HEADING = new Type(true, 3.9, Ink.GRAPHITE);
    static final Type BODY = new Type(false, 3.05, Ink.GRAPHITE);
    static final Type BODY_BOLD = new Type(true, 3.05, Ink.GRAPHITE);
    static final Type SMALL = new Type(false, 2.45, Ink.GREY);
    static final Type SMALL_BOLD = new Type(true, 2.45, Ink.GRAPHITE);

    Type sized(double newSizeMm) {
        return new Type(bold, newSizeMm, colour);
    }

    Type coloured(Color newColour) {
        return new Type(bold, sizeMm, newColour);
    }

    double lineHeight() {
        return sizeMm * 1.32;
    }
}
