package wallplate.report.pdf;

import java.io.IOException;
import wallplate.geometry.Point;
import wallplate.marking.Verdict;

/** The signs that teachers write: a tick, a cross, cw in a ring, a query. Always with the word beside them. */
final class VerdictSign {

    private static final Pen PEN = Pen.solid(0.35, Ink.GRAPHITE);

    private VerdictSign() {}

    /** Draws the sign about a centre, some three millimetres large. */
    static void draw(Canvas canvas, Verdict verdict, Point centre) throws IOException {
        double x = centre.x();
        double y = centre.y();
        switch (verdict) {
            case MET ->
                canvas.polyline(
                        PEN.withWidth(0.45),
                        new Point(x - 1.1, y),
                        new Point(x - 0.35, y - 0.9),
                        new Point(x + 1.2, y + 1.1));
            case NOT_MET -> {
                canvas.line(x - 0.9, y - 0.9, x + 0.9, y + 0.9, PEN);
                canvas.line(x - 0.9, y + 0.9, x + 0.9, y - 0.9, PEN);
            }
            case CARRIED -> {
                canvas.disc(centre, 1.5, Ink.PAPER, PEN.withWidth(0.25));
                canvas.textCentred("cw", x, y - 0.6, Type.SMALL_BOLD.sized(1.9));
            }
            case UNDECIDED -> canvas.textCentred("?", x, y - 1.1, Type.BODY_BOLD.sized(3.2));
        }
    }
}
