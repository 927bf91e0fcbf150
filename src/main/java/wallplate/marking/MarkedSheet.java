package wallplate.marking;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * The marks of one sheet under one version of a guideline.
 *
 * @param guideline the version of the guideline that they were given under
 * @param marks in the guideline's order
 * @param groups the maxima that hold for some of them together
 */
public record MarkedSheet(String guideline, List<Mark> marks, List<GroupTotal> groups) {
    public MarkedSheet {
        marks = List.copyOf(marks);
        groups = List.copyOf(groups);
    }

    public MarkedSheet(String guideline, List<Mark> marks) {
        this(guideline, marks, List.of());
    }

    public double awarded() {
        return total(Mark::awarded);
    }

    public double available() {
        return total(Mark::available);
    }

    public int undecided() {
        return (int) marks.stream()
                .filter(mark -> mark.verdict() == Verdict.UNDECIDED)
                .count();
    }

    public Optional<Mark> mark(String criterion) {
        return marks.stream().filter(mark -> mark.criterion().equals(criterion)).findFirst();
    }

    /** The same marks in the words of another run, such as one in another language, wherever that run says the same. */
    public MarkedSheet inWordsOf(MarkedSheet other) {
        return new MarkedSheet(
                guideline,
                marks.stream()
                        .map(mark -> other.mark(mark.criterion())
                                .filter(mark::saysTheSameAs)
                                .orElse(mark))
                        .toList(),
                groups);
    }

    /** The sum over all marks, each group counted up to its maximum. */
    private double total(ToDoubleFunction<Mark> part) {
        double grouped = groups.stream()
                .mapToDouble(group -> Math.min(
                        group.maximum(),
                        marks.stream()
                                .filter(mark -> group.criteria().contains(mark.criterion()))
                                .mapToDouble(part)
                                .sum()))
                .sum();
        double alone =
                marks.stream().filter(this::isUngrouped).mapToDouble(part).sum();
        return grouped + alone;
    }

    private boolean isUngrouped(Mark mark) {
        return groups.stream().noneMatch(group -> group.criteria().contains(mark.criterion()));
    }
}
