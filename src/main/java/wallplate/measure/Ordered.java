package wallplate.measure;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Gives parallel lines that were found in order to the roles that are expected in order, where lines may be missing
 * and others may not belong: the cheapest assignment.
 */
final class Ordered {

    /** What a role costs that the task asks for and that has no line. */
    static final double MISSING_COST = 4;

    private static final double LEFT_OVER_COST = 4;

    private Ordered() {}

    /** How unlikely a gap between two neighbouring roles is. */
    interface Gap {
        double cost(double gapMm);
    }

    /** How unlikely a line is for a role for reasons of its own. */
    interface Fitness {
        double cost(int role, int line);
    }

    /** How unlikely a whole assignment is, beyond its gaps: lines that come and go together. */
    interface Together {
        double cost(int[] lines);
    }

    /**
     * @param lines for each role the index of its line, -1 where none
     */
    record Assignment(int[] lines) {

        Optional<Integer> line(int role) {
            return lines[role] < 0 ? Optional.empty() : Optional.of(lines[role]);
        }
    }

    /**
     * @param offsets the lines' places, ascending
     * @param lengths the lines' lengths: a long line left over costs more than a short one
     * @param gaps cost of each gap between neighbouring roles; one fewer than roles
     * @param usualGaps the expected gaps, to be added up where a role between is missing
     * @param missingCosts what each role costs that has no line
     */
    static Assignment assign(
            double[] offsets,
            double[] lengths,
            List<Gap> gaps,
            double[] usualGaps,
            double[] missingCosts,
            Fitness fitness,
            Together together) {
        int roles = gaps.size() + 1;
        double longest = 1;
        for (double length : lengths) {
            longest = Math.max(longest, length);
        }
        Search search = new Search(offsets, lengths, gaps, usualGaps, missingCosts, fitness, together, roles, longest);
        search.place(0, 0, new int[roles], 0);
        return new Assignment(search.bestLines);
    }

    private static final class Search {
        private final double[] offsets;
        private final double[] lengths;
        private final List<Gap> gaps;
        private final double[] usualGaps;
        private final double[] missingCosts;
        private final Fitness fitness;
        private final Together together;
        private final int roles;
        private final double longest;
        private double best = Double.MAX_VALUE;
        private int[] bestLines;

        Search(
                double[] offsets,
                double[] lengths,
                List<Gap> gaps,
                double[] usualGaps,
                double[] missingCosts,
                Fitness fitness,
                Together together,
                int roles,
                double longest) {
            this.offsets = offsets;
            this.lengths = lengths;
            this.gaps = gaps;
            this.usualGaps = usualGaps;
            this.missingCosts = missingCosts;
            this.fitness = fitness;
            this.together = together;
            this.roles = roles;
            this.longest = longest;
            this.bestLines = new int[roles];
            Arrays.fill(bestLines, -1);
        }

        void place(int role, int nextLine, int[] lines, double cost) {
            if (role == roles) {
                double total = cost + together.cost(lines);
                for (int line = nextLine; line < offsets.length; line++) {
                    total += leftOver(line);
                }
                offer(total, lines);
                return;
            }
            lines[role] = -1;
            place(role + 1, nextLine, lines, cost + missingCosts[role]);
            double skipped = 0;
            for (int line = nextLine; line < offsets.length; line++) {
                lines[role] = line;
                place(role + 1, line + 1, lines, cost + skipped + fitness.cost(role, line) + gapCost(role, line, lines));
                skipped += leftOver(line);
            }
            lines[role] = -1;
        }

        private double leftOver(int line) {
            return LEFT_OVER_COST * lengths[line] / longest;
        }

        private double gapCost(int role, int line, int[] lines) {
            int previous = role - 1;
            while (previous >= 0 && lines[previous] < 0) {
                previous--;
            }
            if (previous < 0) {
                return 0;
            }
            double gap = offsets[line] - offsets[lines[previous]];
            if (previous == role - 1) {
                return gaps.get(previous).cost(gap);
            }
            double usual = 0;
            for (int between = previous; between < role; between++) {
                usual += usualGaps[between];
            }
            return Math.min(4, Math.abs(gap - usual) / 0.8);
        }

        private void offer(double total, int[] lines) {
            if (total < best) {
                best = total;
                bestLines = lines.clone();
            }
        }
    }
}
