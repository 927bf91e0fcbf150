package wallplate.records;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import wallplate.geometry.Segment;

/**
 * What a person corrected about the reading of a sheet.
 *
 * @param key the key that was measured from chosen lines; empty where the sheet's millimetres were corrected
 * @param places the chosen lines, or one piece from the bar's left tick to its right one, in millimetres of the level page
 *     as it was read; none where the correction was taken back
 * @param correctedBy who corrected it, as far as it is known
 */
public record SheetCorrection(
        Optional<String> key, List<Segment> places, String correctedBy, Instant correctedAt) {

    public SheetCorrection {
        places = List.copyOf(places);
    }

    /** Whether it takes back what was corrected before. */
    public boolean isTakenBack() {
        return places.isEmpty();
    }
}
