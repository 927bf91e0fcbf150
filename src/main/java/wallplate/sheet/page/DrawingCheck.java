package wallplate.sheet.page;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import wallplate.geometry.Segment;
import wallplate.sheet.page.LineRefit.Fitted;

/**
 * Whether a page shows a section through a roof at all: long parallel slopes together with level and upright lines.
 *
 * <p>The sentences are for learners of fourteen: what was found and what to do.
 */
public final class DrawingCheck {

    private static final double LEAST_LENGTH = 80;
    private static final double LETTER = 6;
    private static final int MANY_PIECES = 60;
    /** So much of a ruled line is inked; letters in line leave more open. */
    private static final double WHOLE = 0.9;

    private static final int FEW_SLOPES = 2;
    private static final double FEW_SLOPES_LENGTH = 80;
    private static final double LEVEL_LENGTH = 20;
    private static final double UPRIGHT_LENGTH = 8;
    private static final double WALL_LENGTH = 12;
    private static final int FEWEST_FACES = 3;
    /** With so many long slopes, as rafter and covering have, one wall's two faces will do. */
    private static final int MANY_SLOPES = 3;

    private static final int FACES_OF_ONE_WALL = 2;
    /** Where walls are cut short, their faces and the fascia's beside them. */
    private static final int SHORT_FACES = 4;

    private DrawingCheck() {}

    /** Why the page cannot be a drawing of any kind; empty where it can. */
    public static Optional<String> ofPage(List<Segment> segments, AxisLines drawn, Optional<SlopingLines> slopes) {
        double lines = length(drawn.alongX())
                + length(drawn.alongY())
                + slopes.map(SlopingLines::totalLength).orElse(0.0);
        double pieces = segments.stream().mapToDouble(Segment::length).sum();
        if (pieces < LEAST_LENGTH) {
            return Optional.of("This page is blank. Put the sheet with the drawn side towards the scanner's glass and scan"
                    + " it again.");
        }
        // Letters in rows of like words stand in line and make long lines, with gaps.
        boolean writing = isWriting(segments) && lengthOfWhole(drawn) < LEAST_LENGTH && slopes.isEmpty();
        if (lines < LEAST_LENGTH || writing) {
            return Optional.of(
                    isWriting(segments)
                            ? "This page shows writing but no drawing. Scan the sheet with the drawing on it."
                            : "There are no ruled lines of a drawing on this page. Scan the sheet with the drawing on it;"
                                    + " if it is the right sheet, scan it again at 300 dpi.");
        }
        return Optional.empty();
    }

    /** Why the page is another drawing than a section through a roof; empty where it may be one. */
    public static Optional<String> ofSection(AxisLines drawn, Optional<SlopingLines> slopes, Turn turn) {
        List<Fitted> level = turn.isLevelAlongX() ? drawn.alongX() : drawn.alongY();
        List<Fitted> upright = turn.isLevelAlongX() ? drawn.alongY() : drawn.alongX();
        if (slopes.isEmpty() || !areEnough(slopes.get())) {
            return Optional.of("This is not the section that was asked for: it has no long sloping lines of a roof. Upload"
                    + " the sheet with the section on it.");
        }
        // One level line may be the reference bar. Without tie beam or ceiling the faces of the walls speak for a section.
        boolean levelLines = longer(level, LEVEL_LENGTH) >= 2;
        int faces = slopes.get().lines().size() >= MANY_SLOPES ? FACES_OF_ONE_WALL : FEWEST_FACES;
        boolean walls = longer(upright, WALL_LENGTH) >= faces
                || slopes.get().lines().size() >= MANY_SLOPES && longer(upright, UPRIGHT_LENGTH) >= SHORT_FACES;
        if (!(levelLines || walls) || longer(upright, UPRIGHT_LENGTH) < 1) {
            return Optional.of("This is not the section that was asked for: beside sloping lines it needs level and"
                    + " upright ones. Upload the sheet with the section on it.");
        }
        return Optional.empty();
    }

    private static boolean areEnough(SlopingLines slopes) {
        int count = slopes.lines().size();
        return count > FEW_SLOPES || (count == FEW_SLOPES && slopes.totalLength() >= FEW_SLOPES_LENGTH);
    }

    private static long longer(List<Fitted> lines, double length) {
        return lines.stream().filter(line -> line.segment().length() >= length).count();
    }

    private static double lengthOfWhole(AxisLines drawn) {
        return Stream.concat(drawn.alongX().stream(), drawn.alongY().stream())
                .filter(line -> line.coverage() > WHOLE && line.segment().length() > 2 * LETTER)
                .mapToDouble(line -> line.segment().length())
                .sum();
    }

    private static double length(List<Fitted> lines) {
        return lines.stream().mapToDouble(line -> line.segment().length()).sum();
    }

    /** Many short pieces and nothing long. */
    private static boolean isWriting(List<Segment> segments) {
        double[] lengths = segments.stream()
                .map(Segment::length)
                .sorted(Comparator.naturalOrder())
                .mapToDouble(Double::doubleValue)
                .toArray();
        return lengths.length >= MANY_PIECES && lengths[lengths.length / 2] < LETTER;
    }
}
