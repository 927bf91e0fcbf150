package wallplate.sheet.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The proportions of a frame that was printed on the sheet, from which a stretch across the bar can be told.
 *
 * <p>Printed frames stand at whole millimetres from the paper's edges, alike on all sides or with the 20 mm filing margin
 * of ISO 5457 at the left. A frame counts only where its own level size by the bar says which of these it is and no other
 * fits nearly as well; a frame drawn by hand is hardly ever so square.
 */
final class PrintedFrame {

    private static final double FILING_MARGIN = 20;
    private static final int STANDARD_MARGIN = 10;
    /** What a margin other than the standard's counts like, beside squared misfits. */
    private static final double UNUSUAL = 5;
    private static final int SMALLEST_MARGIN = 5;
    private static final int LARGEST_MARGIN = 15;
    /** Printed lines are squarer than drawn ones, in degrees; a stretched feeder adds some hundredths. */
    private static final double CROOKEDNESS = 0.05;
    /** How well the bar gives the frame's level size: the learner's tenth of a millimetre and the printer's. */
    private static final double SIZE = 0.002;
    /** How much a scanner may stretch. */
    private static final double STRETCH = 0.0035;
    private static final double GOOD_FIT = 7;
    private static final double CLEARLY_BETTER = 4;

    private final double sheetWidth;
    private final double sheetHeight;

    /** For a sheet of this size, upright. */
    PrintedFrame(double sheetWidth, double sheetHeight) {
        this.sheetWidth = sheetWidth;
        this.sheetHeight = sheetHeight;
    }

    private record Fit(double factor, double misfit) {}

    /**
     * The factor by which upright lengths must be multiplied to give the frame its printed proportions.
     *
     * @param level the frame's level size by the bar
     * @param upright its upright size with the same scale
     * @param crookednessDegrees how far its lines are off square
     */
    Optional<Double> uprightFactor(double level, double upright, double crookednessDegrees) {
        if (crookednessDegrees > CROOKEDNESS) {
            return Optional.empty();
        }
        List<Fit> fits = new ArrayList<>();
        for (int margin = SMALLEST_MARGIN; margin <= LARGEST_MARGIN; margin++) {
            double height = sheetHeight - 2 * margin;
            double unusual = margin == STANDARD_MARGIN ? 0 : UNUSUAL;
            fits.add(fit(sheetWidth - 2 * margin, height, level, upright, unusual));
            fits.add(fit(sheetWidth - FILING_MARGIN - margin, height, level, upright, unusual));
        }
        fits.sort(Comparator.comparingDouble(Fit::misfit));
        Fit best = fits.get(0);
        boolean clear = fits.get(1).misfit - best.misfit > CLEARLY_BETTER;
        return best.misfit < GOOD_FIT && clear ? Optional.of(best.factor) : Optional.empty();
    }

    private static Fit fit(double width, double height, double level, double upright, double unusual) {
        double factor = height / width * level / upright;
        double size = (level / width - 1) / SIZE;
        double stretch = (factor - 1) / STRETCH;
        return new Fit(factor, size * size + stretch * stretch + unusual);
    }
}
