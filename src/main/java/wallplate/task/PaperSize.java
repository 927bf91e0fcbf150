package wallplate.task;

import java.util.Arrays;
import java.util.List;

/** The trimmed sheets of the ISO 216 A series that a drawing may be drawn on. */
public enum PaperSize {
    A0(841, 1189),
    A1(594, 841),
    A2(420, 594),
    A3(297, 420),
    A4(210, 297);

    private final double shortSideMm;
    private final double longSideMm;

    PaperSize(double shortSideMm, double longSideMm) {
        this.shortSideMm = shortSideMm;
        this.longSideMm = longSideMm;
    }

    public double shortSideMm() {
        return shortSideMm;
    }

    public double longSideMm() {
        return longSideMm;
    }

    static List<String> names() {
        return Arrays.stream(values()).map(PaperSize::name).toList();
    }
}
