package wallplate.marking;

import java.util.List;

/**
 * The marks of one sheet under one version of a guideline.
 *
 * @param guideline the version of the guideline that they were given under
 * @param marks in the guideline's order
 */
public record MarkedSheet(String guideline, List<Mark> marks) {

    public MarkedSheet {
        marks = List.copyOf(marks);
    }

    public double awarded() {
        return marks.stream().mapToDouble(Mark::awarded).sum();
    }

    public double available() {
        return marks.stream().mapToDouble(Mark::available).sum();
    }

    public int undecided() {
        return (int) marks.stream().filter(mark -> mark.verdict() == Verdict.UNDECIDED).count();
    }
}
