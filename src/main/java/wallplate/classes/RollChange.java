package wallplate.classes;

import java.util.List;
import wallplate.tables.LineFault;

/** What became of a class list that was taken in. */
public sealed interface RollChange {

    /**
     * @param added learners who are new in the class
     * @param changed learners of whom the list has another name or candidate number
     * @param same learners who stood like that already
     * @param notListed learners of the class whom the list does not name; they stay in it
     * @param unused the headings of columns that are not kept
     */
    record Done(int added, int changed, int same, List<String> notListed, List<String> unused) implements RollChange {
        public Done {
            notListed = List.copyOf(notListed);
            unused = List.copyOf(unused);
        }
    }

    /** Nothing was changed. */
    record Refused(List<LineFault> faults) implements RollChange {
        public Refused {
            faults = List.copyOf(faults);
        }
    }
}
