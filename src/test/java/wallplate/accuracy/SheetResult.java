package wallplate.accuracy;

import java.util.Optional;
import wallplate.measure.MeasuredSheet;
import wallplate.sheet.LevelPage;

/**
 * What the program made of a sheet: a level page with measurements, or a refusal.
 *
 * @param page empty where the sheet was refused
 */
record SheetResult(TruthSheet truth, Optional<LevelPage> page, Optional<MeasuredSheet> measured) {

    boolean isRead() {
        return measured.isPresent();
    }
}
