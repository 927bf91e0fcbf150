package wallplate.sheet;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import wallplate.sheet.page.AxisLines;
import wallplate.sheet.page.BarChoice;
import wallplate.sheet.page.BarFinder.Bar;
import wallplate.sheet.page.Turn;

/**
 * What was found on a rough page with its axes taken to lie in one direction.
 *
 * @param all the lines along the axes
 * @param drawn those without frame and streaks
 * @param bars what could be a bar, in either direction
 * @param chosen the bar, where there is one
 * @param turn which way up the sheet lies, as far as the page could be understood
 * @param refusal why the page cannot be read so; empty where it can
 */
record Sight(
        AxisLines all,
        AxisLines drawn,
        Bars bars,
        Optional<BarChoice.Choice> chosen,
        Turn turn,
        Optional<String> refusal) {

    /** A page that shows no drawing. */
    static Sight of(AxisLines all, AxisLines drawn, String refusal) {
        return new Sight(
                all, drawn, new Bars(List.of(), List.of()), Optional.empty(), Turn.UPRIGHT, Optional.of(refusal));
    }

    Optional<Bar> bar() {
        return chosen.map(BarChoice.Choice::bar);
    }

    /** Of directions in the order of their likelihood, the first unless only another makes a section of the page, or one with a bar. */
    static Sight likeliest(List<Sight> sights) {
        return sights.stream()
                .max(Comparator.comparingInt(Sight::understood)
                        .thenComparing(Comparator.comparingInt(sights::indexOf).reversed()))
                .orElseThrow();
    }

    private int understood() {
        if (refusal.isPresent()) {
            return 0;
        }
        return chosen.isPresent() ? 2 : 1;
    }

    /** Lines with two ticks, likeliest first, in either direction of the rough page. */
    record Bars(List<Bar> alongX, List<Bar> alongY) {

        private static final double SECOND_BAR_SHAPE = 0.7;

        /** The factor that makes an upright bar as long as the level one, where there is one. */
        Optional<Double> second(Bar level, Turn turn) {
            List<Bar> upright = turn.isLevelAlongX() ? alongY : alongX;
            return upright.stream()
                    .filter(bar -> bar.shape() > SECOND_BAR_SHAPE)
                    .max(Comparator.comparingDouble(Bar::shape))
                    .map(bar -> level.segment().length() / bar.segment().length())
                    .map(factor -> turn.isLevelAlongX() ? factor : 1 / factor);
        }
    }
}
