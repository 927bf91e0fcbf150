package wallplate.moderation;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import wallplate.solver.Expected;

/**
 * A sheet as the second marker sees it: the drawing and what was asked. It names no learner.
 *
 * @param place its place in the sample, from 1
 * @param of how many sheets the sample has
 * @param pagePicture the level page at full resolution in the scan store
 * @param screenPicture the level page at the size of a screen
 */
public record BlindSheet(
        Moderation moderation,
        int place,
        int of,
        double widthMm,
        double heightMm,
        String pagePicture,
        String screenPicture,
        List<Criterion> criteria) {

    public BlindSheet {
        criteria = List.copyOf(criteria);
    }

    /**
     * One criterion.
     *
     * @param tolerance the tolerance of the guideline, in the unit of the expected value
     * @param given what this marker gave; empty while nothing was
     */
    public record Criterion(
            String id,
            String title,
            double available,
            Optional<Expected> expected,
            OptionalDouble tolerance,
            OptionalDouble given) {}
}
