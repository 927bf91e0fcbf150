package wallplate.marksheets;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * A task of a mark sheet.
 *
 * @param place from 1
 * @param classSetId empty where the set is no longer kept
 * @param weight above 0
 */
public record Column(int place, Optional<Long> classSetId, String title, BigDecimal weight) {

    public Column {
        if (weight.signum() <= 0) {
            throw new IllegalArgumentException("a weight is above 0, not " + weight);
        }
    }
}
