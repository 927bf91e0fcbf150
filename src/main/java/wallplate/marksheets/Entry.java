package wallplate.marksheets;

import java.math.BigDecimal;

/**
 * One learner's result in one task.
 *
 * @param awarded the marks of the sheet, before anything is taken off for being late; 0 where there are none
 * @param available the marks that could be had; 0 where that is not known
 */
public record Entry(Standing standing, BigDecimal awarded, BigDecimal available) {

    public Entry {
        if (awarded.signum() < 0 || awarded.compareTo(available) > 0) {
            throw new IllegalArgumentException("marks awarded lie between 0 and " + available + ", not " + awarded);
        }
        if (available.signum() == 0 && (standing == Standing.MARKED || standing == Standing.LATE)) {
            throw new IllegalArgumentException("marks are out of more than 0");
        }
    }

    static Entry open() {
        return new Entry(Standing.OPEN, BigDecimal.ZERO, BigDecimal.ZERO);
    }

    Entry as(Standing other) {
        return new Entry(other, awarded, available);
    }
}
