package wallplate.solver.parts;

import wallplate.task.PlainNumber;

/** Numbers in workings: at most two decimals of a millimetre. */
final class Numbers {

    private Numbers() {}

    static String mm(double value) {
        return PlainNumber.text(value, 2);
    }
}
