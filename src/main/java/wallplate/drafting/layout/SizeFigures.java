package wallplate.drafting.layout;

import java.util.Optional;
import wallplate.drafting.Figures;
import wallplate.drafting.paper.Decimals;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;

/** The figures that stand at dimensions and in labels, real or as on paper. */
record SizeFigures(ExpectedDrawing drawing, Figures figures) {

    /** The figure of a measured key; empty where the task has no such length or angle. */
    Optional<String> ofKey(String key) {
        return drawing.value(key).flatMap(this::figure);
    }

    private Optional<String> figure(Expected expected) {
        if (expected instanceof Expected.Length length) {
            return Optional.of(Decimals.figure(switch (figures) {
                case REAL -> length.realMm();
                case PAPER -> length.exactMm();
                case DRAWN -> length.drawnMm();
            }));
        }
        if (expected instanceof Expected.Angle angle) {
            return Optional.of(Decimals.figure(angle.degrees()) + "°");
        }
        return Optional.empty();
    }

    /** The figure of a size as the task file has it; empty where it has none. */
    Optional<String> ofSize(String key) {
        if (!(drawing.task().sizes().asMap().get(key) instanceof Double real)) {
            return Optional.empty();
        }
        return Optional.of(figures == Figures.REAL ? Decimals.figure(real) : ofPaper(drawing.task().scale().onPaper(real)));
    }

    /** The figure of a length on paper that no key names. */
    String ofPaper(double paperMm) {
        return Decimals.figure(switch (figures) {
            case REAL -> paperMm * drawing.task().scale().denominator();
            case PAPER -> paperMm;
            // Halves go up, and nothing is drawn as zero.
            case DRAWN -> Math.max(1, Math.floor(paperMm + 0.5));
        });
    }
}
