package wallplate.drafting;

import java.util.List;

/**
 * One step of a construction guide, ready to show.
 *
 * @param number from 1
 * @param part the part that it draws
 * @param title in a few words
 * @param calculation the arithmetic before the pencil is taken up, one line each; may be empty
 * @param instruction what to measure from where and what to draw
 * @param svg the picture as an {@code svg} element: earlier lines carry the class {@code light}, this step's faint ones
 *     {@code construction}
 */
public record GuideStep(
        int number, String part, String title, List<String> calculation, String instruction, String svg) {

    public GuideStep {
        calculation = List.copyOf(calculation);
    }
}
