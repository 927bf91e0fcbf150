package wallplate.assessment;

import java.util.Optional;
import wallplate.geometry.PlaneMap;
import wallplate.geometry.Segment;
import wallplate.sheet.BarByHand;
import wallplate.sheet.LevelPage;

/** A sheet's level page with its millimetres as a person corrected them. */
public final class CorrectedPage {

    private final LevelPage page;
    private final Optional<PlaneMap> fromRead;

    private CorrectedPage(LevelPage page, Optional<PlaneMap> fromRead) {
        this.page = page;
        this.fromRead = fromRead;
    }

    /** What came of correcting the millimetres. */
    public sealed interface Outcome {}

    /** The page, which is the one that was read where no millimetres were corrected. */
    public record Laid(CorrectedPage page) implements Outcome {}

    /**
     * The places shown cannot be the bar's ticks.
     *
     * @param reason a sentence with what was found and what to do
     */
    public record Refused(String reason) implements Outcome {}

    /** The page of a sheet in the millimetres of both ticks, where they were shown. */
    public static Outcome of(AssessedSheet.Read asRead, Optional<Corrections.Ticks> ticks) {
        if (ticks.isEmpty()) {
            return new Laid(new CorrectedPage(asRead.levelPage(), Optional.empty()));
        }
        double bar = asRead.expected().task().sheet().referenceBarMm();
        BarByHand.Outcome outcome =
                BarByHand.calibrate(asRead.levelPage(), ticks.get().left(), ticks.get().right(), bar);
        if (outcome instanceof BarByHand.Calibrated calibrated) {
            return new Laid(new CorrectedPage(calibrated.page(), Optional.of(calibrated.fromBefore())));
        }
        return new Refused(((BarByHand.Refused) outcome).reason());
    }

    public LevelPage page() {
        return page;
    }

    /** Whether the millimetres are others than those that were read. */
    public boolean isCorrected() {
        return fromRead.isPresent();
    }

    /** A piece of the page as it was read, on this page. */
    public Segment fromRead(Segment piece) {
        return fromRead.map(map -> map.apply(piece)).orElse(piece);
    }

    /** A piece of this page, on the page as it was read. */
    public Segment toRead(Segment piece) {
        return fromRead.map(map -> map.inverse().apply(piece)).orElse(piece);
    }
}
