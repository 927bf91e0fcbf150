package wallplate.web.guideline;

import java.util.OptionalDouble;
import wallplate.task.PlainNumber;

/** A number as it was typed into a form. */
final class FormNumber {

    private FormNumber() {}

    /** The number, whole where it is whole; the text itself where it is none, so that the fault can show it. */
    static Object read(String typed) {
        OptionalDouble number = PlainNumber.read(typed);
        if (number.isEmpty()) {
            return typed;
        }
        double value = number.getAsDouble();
        boolean whole = value == Math.rint(value) && Math.abs(value) <= Integer.MAX_VALUE;
        return whole ? (Object) (int) value : (Object) value;
    }
}
