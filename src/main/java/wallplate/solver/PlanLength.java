package wallplate.solver;

import wallplate.task.PlainNumber;
import wallplate.task.Scale;

/**
 * A length measured on a plan, its real size, and its length on a drawing at another scale.
 *
 * @param onPlanMm millimetres on the plan's paper
 */
public record PlanLength(double onPlanMm, Scale plan, Scale drawing) {

    public double realMm() {
        return onPlanMm * plan.denominator();
    }

    public double onDrawingMm() {
        return drawing.onPaper(realMm());
    }

    /** Such as {@code 104 x 50 = 5200 mm; 5200 / 20 = 260 mm}. */
    public String working() {
        return "%s x %s = %s mm; %s / %s = %s mm"
                .formatted(
                        text(onPlanMm),
                        text(plan.denominator()),
                        text(realMm()),
                        text(realMm()),
                        text(drawing.denominator()),
                        text(onDrawingMm()));
    }

    private static String text(double value) {
        return PlainNumber.text(value, 2);
    }
}
