package wallplate.marking;

import java.util.List;
import wallplate.task.Fault;

/** What came of reading a marking guideline: the guideline, or every fault in it. */
public sealed interface GuidelineReading {

    record Accepted(Guideline guideline) implements GuidelineReading {}

    record Refused(List<Fault> faults) implements GuidelineReading {
        public Refused {
            faults = List.copyOf(faults);
        }
    }
}
