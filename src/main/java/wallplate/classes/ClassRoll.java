package wallplate.classes;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import wallplate.tables.LineFault;
import wallplate.tables.Row;
import wallplate.tables.TableReading;

/**
 * A class list read from a table: the learners of its lines, or every fault with its line.
 *
 * <p>The first line may name the columns {@code name} and {@code number} (or {@code candidate}) in any order; else the
 * first column is the name and the second the candidate number.
 */
public sealed interface ClassRoll {

    int LONGEST_NAME = 200;
    int LONGEST_NUMBER = 60;
    int MOST_LEARNERS = 1000;

    /**
     * @param unused the headings of columns that a class list does not keep
     */
    record Accepted(List<ListedLearner> learners, List<String> unused) implements ClassRoll {
        public Accepted {
            learners = List.copyOf(learners);
            unused = List.copyOf(unused);
        }
    }

    record Refused(List<LineFault> faults) implements ClassRoll {
        public Refused {
            faults = List.copyOf(faults);
        }
    }

    /**
     * Reads a class list.
     *
     * @param numbersWanted whether a learner without a candidate number is a fault
     */
    static ClassRoll of(TableReading reading, boolean numbersWanted) {
        if (reading instanceof TableReading.Refused refused) {
            return new Refused(refused.faults());
        }
        return of(((TableReading.Read) reading).rows(), numbersWanted);
    }

    private static ClassRoll of(List<Row> rows, boolean numbersWanted) {
        if (rows.isEmpty()) {
            return new Refused(List.of(new LineFault(0, "The list is empty: it needs a learner a line.")));
        }
        Columns columns = Columns.of(rows.get(0));
        List<Row> lines = columns.heading() ? rows.subList(1, rows.size()) : rows;
        if (lines.isEmpty()) {
            return new Refused(List.of(new LineFault(0, "The list has a heading and no learners.")));
        }
        if (lines.size() > MOST_LEARNERS) {
            return new Refused(List.of(new LineFault(
                    0, "The list has " + lines.size() + " learners; a class may have up to " + MOST_LEARNERS + ".")));
        }
        List<LineFault> faults = new ArrayList<>();
        List<ListedLearner> learners = lines.stream()
                .map(row -> new ListedLearner(
                        row.line(), row.cell(columns.name()), row.cell(columns.number())))
                .toList();
        learners.forEach(learner -> look(learner, numbersWanted, faults));
        twice(learners, ListedLearner::candidateNumber, "candidate number", faults);
        twice(
                learners.stream().filter(one -> one.candidateNumber().isEmpty()).toList(),
                ListedLearner::name,
                "name without a candidate number",
                faults);
        faults.sort(java.util.Comparator.comparingInt(LineFault::line));
        return faults.isEmpty() ? new Accepted(learners, columns.unused()) : new Refused(faults);
    }

    private static void look(ListedLearner learner, boolean numbersWanted, List<LineFault> faults) {
        if (learner.name().isEmpty()) {
            faults.add(new LineFault(learner.line(), "The name is missing."));
        } else if (learner.name().length() > LONGEST_NAME) {
            faults.add(new LineFault(
                    learner.line(), "The name has " + learner.name().length() + " letters; it may have " + LONGEST_NAME + "."));
        }
        if (learner.candidateNumber().length() > LONGEST_NUMBER) {
            faults.add(new LineFault(
                    learner.line(),
                    "The candidate number has " + learner.candidateNumber().length() + " letters; it may have "
                            + LONGEST_NUMBER + "."));
        }
        if (numbersWanted && learner.candidateNumber().isEmpty()) {
            faults.add(new LineFault(learner.line(), "The candidate number is missing; this class goes by them."));
        }
    }

    private static void twice(
            List<ListedLearner> learners,
            Function<ListedLearner, String> property,
            String called,
            List<LineFault> faults) {
        Map<String, Integer> firstLine = new HashMap<>();
        for (ListedLearner learner : learners) {
            String value = property.apply(learner);
            Integer before = value.isEmpty() ? null : firstLine.putIfAbsent(value.toLowerCase(Locale.ROOT), learner.line());
            if (before != null) {
                faults.add(new LineFault(
                        learner.line(), "The " + called + " \"" + value + "\" stands in line " + before + " too."));
            }
        }
    }

    /**
     * Which column is which, from 0.
     *
     * @param number -1 where there is none
     */
    record Columns(boolean heading, int name, int number, List<String> unused) {

        private static final List<String> NAME_WORDS = List.of("name", "learner", "student", "pupil");
        private static final List<String> NUMBER_WORDS = List.of("number", "candidate", "no", "no.");

        static Columns of(Row first) {
            int name = column(first, NAME_WORDS);
            if (name < 0) {
                return new Columns(false, 0, 1, List.of());
            }
            int number = column(first, NUMBER_WORDS);
            List<String> unused = new ArrayList<>();
            for (int column = 0; column < first.cells().size(); column++) {
                if (column != name && column != number && !first.cell(column).isEmpty()) {
                    unused.add(first.cell(column));
                }
            }
            return new Columns(true, name, number, unused);
        }

        private static int column(Row heading, List<String> words) {
            for (int column = 0; column < heading.cells().size(); column++) {
                String title = heading.cell(column).toLowerCase(Locale.ROOT);
                if (words.stream()
                        .anyMatch(word ->
                                title.equals(word) || title.startsWith(word + " ") || title.endsWith(" " + word))) {
                    return column;
                }
            }
            return -1;
        }
    }
}
