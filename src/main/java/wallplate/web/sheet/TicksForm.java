package wallplate.web.sheet;

import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.records.PageFacts;
import wallplate.records.SheetCorrection;
import wallplate.task.PlainNumber;

/** Both ticks of the bar as a person fills them in: millimetres from the picture's left and lower edges. */
record TicksForm(@Nullable String leftX, @Nullable String leftY, @Nullable String rightX, @Nullable String rightY) {

    /** Where a bar usually lies: the lowest 45 mm, left of the title block. */
    private static final Segment USUAL = Segment.between(30, 20, 130, 20);

    /** The ticks as they stand: shown by a person before, else those of the bar that was found, else the usual place. */
    static TicksForm of(Optional<SheetCorrection> standing, PageFacts page) {
        Segment bar = standing.map(correction -> correction.places().get(0))
                .or(page::bar)
                .orElse(USUAL);
        return new TicksForm(
                tenth(bar.start().x()), tenth(bar.start().y()), tenth(bar.end().x()), tenth(bar.end().y()));
    }

    private static String tenth(double value) {
        return Double.toString(Math.round(value * 10) / 10.0);
    }

    /** From the left tick to the right one; empty where a number is missing or is none. */
    Optional<Segment> bar() {
        OptionalDouble[] numbers = {number(leftX), number(leftY), number(rightX), number(rightY)};
        for (OptionalDouble number : numbers) {
            if (number.isEmpty() || !Double.isFinite(number.getAsDouble())) {
                return Optional.empty();
            }
        }
        return Optional.of(Segment.between(
                new Point(numbers[0].getAsDouble(), numbers[1].getAsDouble()),
                new Point(numbers[2].getAsDouble(), numbers[3].getAsDouble())));
    }

    private static OptionalDouble number(@Nullable String text) {
        return text == null ? OptionalDouble.empty() : PlainNumber.read(text);
    }
}
