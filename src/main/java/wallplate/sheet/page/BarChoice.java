package wallplate.sheet.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import wallplate.sheet.page.BarFinder.Bar;

/**
 * Which of the lines with two ticks is the reference bar, and so which way up the sheet lies.
 *
 * <p>The bar stands in the lowest part of the sheet; the sheet lies along or across the picture as its format says; and
 * a roof's slopes lie above its ceiling. A bar must agree with most of that.
 */
public final class BarChoice {

    private static final double LOWEST_PART = 50;
    private static final double HIGH_PLACE = 0.2;
    private static final double WRONG_FORMAT = 0.5;
    private static final double SLOPES_BELOW = 0.35;
    /** Shares of the lines under the slope from which, and up to which, a turn is the more likely the more lie there. */
    private static final double FEW_UNDER = 0.25;

    private static final double MANY_UNDER = 0.65;
    private static final double LEAST_SCORE = 0.4;

    private final double width;
    private final double height;
    private final boolean formatAlongX;
    private final boolean turnKnown;
    private final ToDoubleFunction<Turn> shareUnder;

    /**
     * @param formatAlongX whether the sheet's own x axis runs along the rough page's x axis, by its proportions
     * @param turnKnown whether printed marks say that the rough page is upright
     * @param shareUnder for a turn, the share of the level and upright lines that then lie under the sloping ones
     */
    public BarChoice(
            double width, double height, boolean formatAlongX, boolean turnKnown, ToDoubleFunction<Turn> shareUnder) {
        this.width = width;
        this.height = height;
        this.formatAlongX = formatAlongX;
        this.turnKnown = turnKnown;
        this.shareUnder = shareUnder;
    }

    /** A bar with the turn that it makes likely. */
    public record Choice(Bar bar, Turn turn, double score) {}

    /** The best bar; empty where none is likely enough. */
    public Optional<Choice> best(List<Bar> alongX, List<Bar> alongY) {
        List<Choice> choices = new ArrayList<>();
        alongX.forEach(bar -> addBoth(choices, bar, Turn.UPRIGHT));
        alongY.forEach(bar -> addBoth(choices, bar, Turn.QUARTER_LEFT));
        return choices.stream()
                .filter(choice -> choice.score >= LEAST_SCORE)
                .filter(choice -> !turnKnown || choice.turn == Turn.UPRIGHT)
                .max(Comparator.comparingDouble(Choice::score));
    }

    /** The turn that format and slopes alone make likely. */
    public Turn withoutBar() {
        if (turnKnown) {
            return Turn.UPRIGHT;
        }
        Turn turn = formatAlongX ? Turn.UPRIGHT : Turn.QUARTER_LEFT;
        return shareUnder.applyAsDouble(turn) >= 0.5 ? turn : turn.opposite();
    }

    private void addBoth(List<Choice> choices, Bar bar, Turn turn) {
        choices.add(scored(bar, turn));
        choices.add(scored(bar, turn.opposite()));
    }

    private Choice scored(Bar bar, Turn turn) {
        double above = turn.heightOf(bar.segment().midpoint(), width, height);
        double sheetHeight = turn.isLevelAlongX() ? height : width;
        double high = Math.max(0, Math.min(1, (above - LOWEST_PART) / (sheetHeight / 2 - LOWEST_PART)));
        double place = 1 - (1 - HIGH_PLACE) * high;
        double format = turn.isLevelAlongX() == formatAlongX ? 1 : WRONG_FORMAT;
        double under = (shareUnder.applyAsDouble(turn) - FEW_UNDER) / (MANY_UNDER - FEW_UNDER);
        double sense = SLOPES_BELOW + (1 - SLOPES_BELOW) * Math.max(0, Math.min(1, under));
        return new Choice(bar, turn, bar.shape() * place * format * sense);
    }
}
