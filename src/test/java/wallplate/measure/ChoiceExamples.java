package wallplate.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Collects every choice made on a sheet whose true sizes are known, with which of its readings were right. */
final class ChoiceExamples implements ChoiceLog {

    /** A reading is right where each of its sizes is the true one within this. */
    private static final double RIGHT_MM = 0.35;

    /** A choice under the name of its weights. */
    record Named(Weights weights, ChoiceFit.Example example) {}

    private final Function<String, Optional<Double>> truth;
    private final List<Named> examples = new ArrayList<>();

    /**
     * A collector for one sheet.
     *
     * @param truth the true size of a key in millimetres; empty where the part was not drawn
     */
    ChoiceExamples(Function<String, Optional<Double>> truth) {
        this.truth = truth;
    }

    @Override
    public void made(Choice<?> choice) {
        if (choice.options().isEmpty()) {
            return;
        }
        double[][] traits = choice.options().stream().map(Choice.Option::traits).toArray(double[][]::new);
        boolean[] right = new boolean[traits.length];
        for (int index = 0; index < right.length; index++) {
            right[index] = isRight(choice.options().get(index).reading().sizes());
        }
        examples.add(new Named(choice.weights(), new ChoiceFit.Example(traits, right)));
    }

    private boolean isRight(Map<String, Optional<Double>> sizes) {
        return sizes.entrySet().stream().allMatch(size -> {
            Optional<Double> truly = truth.apply(size.getKey());
            return truly.isPresent() == size.getValue().isPresent()
                    && (truly.isEmpty() || Math.abs(truly.get() - size.getValue().get()) < RIGHT_MM);
        });
    }

    List<Named> examples() {
        return List.copyOf(examples);
    }
}
