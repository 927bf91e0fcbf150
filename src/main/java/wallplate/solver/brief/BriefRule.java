package wallplate.solver.brief;

import java.util.stream.Stream;
import wallplate.solver.Advice;
import wallplate.solver.ExpectedDrawing;

/** One thing that a brief is checked for. */
@FunctionalInterface
public interface BriefRule {

    String COMMON_PRACTICE = "common practice, no source";

    /** What this rule has to say of a solved task, in the order of its sizes. */
    Stream<Advice> advice(ExpectedDrawing drawing);
}
