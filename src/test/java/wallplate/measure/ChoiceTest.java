package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Odds of readings by a conditional logit, and the fit of its weights. */
class ChoiceTest {

    private record Length(double mm) implements Reading {

        @Override
        public Map<String, Optional<Double>> sizes() {
            return Map.of("gutter.width", Optional.of(mm));
        }
    }

    private static final Weights WEIGHTS = new Weights("any", List.of("near", "dark"), new double[] {2, 1}, Double.NEGATIVE_INFINITY);

    @Test
    void probabilitiesAreTheExponentialsOfTheUtilitiesMadeToSumToOne() {
        Choice<Length> choice = new Choice<>(WEIGHTS);
        choice.offer(new Length(5), 1, 0.5);
        choice.offer(new Length(6), 0, 0.5);
        choice.offer(new Length(6.1), 0, 0);

        // By hand: e^2.5 = 12.18, e^0.5 = 1.65, e^0 = 1.
        double all = Math.exp(2.5) + Math.exp(0.5) + 1;
        assertThat(choice.best()).contains(new Length(5));
        assertThat(choice.probability(length -> length.mm < 5.5)).isCloseTo(Math.exp(2.5) / all, within(1e-12));
        assertThat(choice.probability(length -> length.mm > 5.5)).isCloseTo((Math.exp(0.5) + 1) / all, within(1e-12));
        assertThat(choice.bestWithout(length -> length.mm < 5.5)).contains(new Length(6));
    }

    @Test
    void whatWasNotOfferedTakesItsShareOfTheProbability() {
        Choice<Length> choice = new Choice<>(new Weights("any", List.of("near"), new double[] {2}, 1));
        choice.offer(new Length(5), 1);
        choice.offer(new Length(6), 0);

        // By hand: e^2 = 7.389, e^0 = 1, and e^1 = 2.718 for the reading that was not offered: 7.389 / 11.107 = 0.6652.
        assertThat(choice.probability(length -> length.mm < 5.5)).isCloseTo(0.6652, within(1e-4));
        assertThat(choice.probability(any -> true)).isCloseTo(1 - 0.2447, within(1e-4));
    }

    @Test
    void nothingOfferedIsNothingChosen() {
        Choice<Length> choice = new Choice<>(WEIGHTS);

        assertThat(choice.best()).isEmpty();
        assertThat(choice.probability(any -> true)).isZero();
    }

    @Test
    void aReadingWithoutEveryTraitIsAMistake() {
        assertThatThrownBy(() -> new Choice<Length>(WEIGHTS).offer(new Length(5), 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("any has 2 traits, not 1");
    }

    @Test
    void keptWeightsMustNameTheReadersTraits() {
        assertThatThrownBy(() -> Weights.of("gutter", List.of("width", "colour")))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("colour");
    }

    @Test
    void fitOfTwoReadingsIsTheLogOddsOfHowOftenEachIsRight() {
        // With one trait, 1 on the one reading and 0 on the other, the likeliest weight is ln(n1 / n0): here ln 4 = 1.386,
        // a little less for the prior.
        List<ChoiceFit.Example> examples = new ArrayList<>();
        for (int sheet = 0; sheet < 500; sheet++) {
            boolean isRight = sheet % 5 != 0;
            examples.add(new ChoiceFit.Example(new double[][] {{1}, {0}}, new boolean[] {isRight, !isRight}));
        }

        assertThat(ChoiceFit.fit(examples, 1)[0]).isCloseTo(Math.log(4), within(0.02));
    }

    @Test
    void aReadingThatWasNotOfferedIsRightWhereNoneIs() {
        ChoiceFit.Example none = new ChoiceFit.Example(new double[][] {{1}, {2}}, new boolean[] {false, false}).orNone();
        ChoiceFit.Example one = new ChoiceFit.Example(new double[][] {{1}, {2}}, new boolean[] {false, true}).orNone();

        assertThat(none.traits()).isDeepEqualTo(new double[][] {{1, 0}, {2, 0}, {0, 1}});
        assertThat(none.right()).containsExactly(false, false, true);
        assertThat(one.right()).containsExactly(false, true, false);
    }

    @Test
    void examplesTellWhichReadingsAreRight() {
        Choice<Length> choice = new Choice<>(WEIGHTS);
        choice.offer(new Length(5.2), 1, 0);
        choice.offer(new Length(5.6), 0, 0);
        ChoiceExamples truth = new ChoiceExamples(key -> Optional.of(5.0));
        ChoiceExamples notDrawn = new ChoiceExamples(key -> Optional.empty());

        truth.made(choice);
        notDrawn.made(choice);

        assertThat(truth.examples().get(0).example().right()).containsExactly(true, false);
        assertThat(notDrawn.examples().get(0).example().right()).containsExactly(false, false);
    }
}
