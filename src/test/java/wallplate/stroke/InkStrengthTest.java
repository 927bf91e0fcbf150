package wallplate.stroke;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import wallplate.geometry.Segment;
import wallplate.sheet.InkImage;

/** Ink whose every line is known, seen through a fading that is known, too. */
class InkStrengthTest {

    private static final double WIDTH_MM = 200;
    private static final double HEIGHT_MM = 140;
    private static final double OUTLINE = 180;
    private static final double CONSTRUCTION = 60;
    private static final double PALEST = 0.35;

    private final StrokeFinder finder = new StrokeFinder(StrokeSettings.usual());

    @Test
    void evensTheInkOfAllLinesThatFadeTogether() {
        InkImage shining = faded(page());
        InkImage even = strength(shining).orElseThrow().evened(shining);

        assertThat(shining.at(170, 60)).isLessThan(0.5 * shining.at(30, 60));
        for (double y = 30; y <= 120; y += 30) {
            assertThat(even.at(170, y) / even.at(30, y)).as("outline at %s mm", y).isBetween(0.8, 1.25);
        }
        // A construction line stays one: it is as pale beside the outlines as it was before.
        assertThat(even.at(170, 45) / even.at(170, 60)).isBetween(0.2, 0.5);
        assertThat(even.at(30, 45) / even.at(30, 60)).isBetween(0.2, 0.5);
    }

    @Test
    void leavesAPageAloneWhereOutlinesRunOnAsConstructionLines() {
        InkCanvas canvas = canvas();
        for (double y = 30; y <= 120; y += 30) {
            canvas.stroke(Segment.between(15, y, 110, y), 0.4, OUTLINE);
            canvas.stroke(Segment.between(110, y, 190, y), 0.3, CONSTRUCTION);
        }
        assertThat(strength(canvas.image(0.1, 3))).isEmpty();
    }

    @Test
    void leavesAPageAloneThatShowsAllLinesAlike() {
        assertThat(strength(page())).isEmpty();
    }

    private Optional<InkStrength> strength(InkImage ink) {
        List<Stroke> strokes = new ArrayList<>(finder.find(ink, 0));
        strokes.addAll(finder.find(ink, 90));
        return InkStrength.of(strokes, WIDTH_MM, HEIGHT_MM);
    }

    private static InkCanvas canvas() {
        return new InkCanvas((int) WIDTH_MM, (int) HEIGHT_MM, 10, 11);
    }

    private static InkImage page() {
        InkCanvas canvas = canvas();
        for (double y = 30; y <= 120; y += 30) {
            canvas.stroke(Segment.between(15, y, 190, y), 0.4, OUTLINE);
        }
        canvas.stroke(Segment.between(15, 45, 190, 45), 0.4, CONSTRUCTION);
        canvas.stroke(Segment.between(100, 20, 100, 125), 0.4, OUTLINE);
        return canvas.image(0.1, 3);
    }

    /** The same page, paler and paler from the middle to the right. */
    private static InkImage faded(InkImage page) {
        byte[] bytes = page.bytes().clone();
        for (int at = 0; at < bytes.length; at++) {
            double x = (at % page.widthPx()) / page.pixelsPerMm();
            double part = 1 - (1 - PALEST) * Math.max(0, Math.min(1, (x - 80) / 80));
            bytes[at] = (byte) Math.round((bytes[at] & 0xff) * part);
        }
        return new InkImage(page.widthPx(), page.heightPx(), page.pixelsPerMm(), bytes);
    }
}
