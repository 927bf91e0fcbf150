package wallplate.web.marksheets;

import java.math.BigDecimal;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Marks as somebody types them, with a point or a comma. */
final class TypedMarks {

    private TypedMarks() {}

    /** Empty where it is no number from 0 with at most two decimals. */
    static Optional<BigDecimal> of(@Nullable String typed) {
        return Optional.ofNullable(typed)
                .map(text -> text.strip().replace(',', '.'))
                .filter(text -> text.matches("\\d{1,5}(\\.\\d{1,2})?"))
                .map(BigDecimal::new);
    }
}
