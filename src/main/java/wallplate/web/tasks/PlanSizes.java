package wallplate.web.tasks;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import wallplate.solver.PlanLength;
import wallplate.task.PlainNumber;
import wallplate.task.Scale;

/**
 * Lengths measured on a plan at another scale, worked out for a drawing.
 *
 * @param plan the plan's scale as typed
 * @param typed the lengths as typed, millimetres on the plan, apart by spaces, semicolons or lines
 * @param lengths those that could be read, in the order typed
 * @param faults what could not be read, each a sentence
 */
record PlanSizes(String plan, String typed, List<PlanLength> lengths, List<String> faults) {

    private static final Pattern REDUCTION = Pattern.compile("1\\s*:\\s*([1-9][0-9]{0,4})");
    private static final String USUAL_PLAN = "1:50";
    /** More than any plan has sizes to take off; longer lists are a slip of the paste. */
    private static final int MOST_LENGTHS = 100;
    /** An A0 sheet is 1189 mm long and 1456 mm from corner to corner; no plan gives more. */
    private static final double LONGEST_ON_PLAN_MM = 2000;

    PlanSizes {
        lengths = List.copyOf(lengths);
        faults = List.copyOf(faults);
    }

    static PlanSizes empty() {
        return new PlanSizes(USUAL_PLAN, "", List.of(), List.of());
    }

    static PlanSizes read(String plan, String typed, Scale drawing) {
        List<String> faults = new ArrayList<>();
        List<PlanLength> lengths = new ArrayList<>();
        Optional<Scale> scale = scale(plan.strip());
        if (scale.isEmpty()) {
            faults.add("Scale of the plan: found “%s”. Right would be such as 1:50.".formatted(plan));
        }
        String[] words = typed.strip().split("[\\s;]+");
        if (words.length > MOST_LENGTHS) {
            faults.add("Found %d lengths. Right would be at most %d at a time.".formatted(words.length, MOST_LENGTHS));
            return new PlanSizes(plan, typed, lengths, faults);
        }
        for (String word : words) {
            if (word.isEmpty()) {
                continue;
            }
            double millimetres = PlainNumber.read(word).orElse(Double.NaN);
            if (!(millimetres > 0 && millimetres <= LONGEST_ON_PLAN_MM)) {
                faults.add("Found “%s”. Right would be millimetres on the plan, such as 62.5.".formatted(word));
            } else {
                scale.ifPresent(read -> lengths.add(new PlanLength(millimetres, read, drawing)));
            }
        }
        return new PlanSizes(plan, typed, lengths, faults);
    }

    private static Optional<Scale> scale(String plan) {
        Matcher reduction = REDUCTION.matcher(plan);
        return reduction.matches() ? Optional.of(new Scale(Double.parseDouble(reduction.group(1)))) : Optional.empty();
    }
}
