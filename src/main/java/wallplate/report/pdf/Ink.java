package wallplate.report.pdf;

import java.awt.Color;

/** The colours of the reports; each keeps its meaning when printed in black and white. */
final class Ink {

    /** Text and what counts. */
    static final Color GRAPHITE = new Color(0x26292C);
    /** What was measured. */
    static final Color BLUE = new Color(0x1D4F7C);
    /** Frames and ruling. */
    static final Color FAINT = new Color(0xB4B0A4);
    /** The second voice: captions. */
    static final Color GREY = new Color(0x5A5E61);
    /** Behind numbers. */
    static final Color PAPER = Color.WHITE;

    private Ink() {}
}
