package wallplate.accuracy;

import java.util.ArrayList;
import java.util.List;

/** Counts over some keys of some sheets: how much was measured, how far off, and how often a confident answer was wrong. */
final class Figures {

    private int drawn;
    private int measured;
    private int right;
    private int wrong;
    private int open;
    private final List<Double> errors = new ArrayList<>();

    void drawn() {
        drawn++;
    }

    void measured() {
        measured++;
    }

    void error(double size) {
        errors.add(size);
    }

    /** A confident answer whose verdict is that of the truth, or is not. */
    void verdict(boolean isRight) {
        if (isRight) {
            right++;
        } else {
            wrong++;
        }
    }

    void open() {
        open++;
    }

    int drawnCount() {
        return drawn;
    }

    int measuredCount() {
        return measured;
    }

    int wrongCount() {
        return wrong;
    }

    int verdictCount() {
        return right + wrong;
    }

    int openCount() {
        return open;
    }

    /** The size below which so large a share of the errors lie; zero where there are none. */
    double errorQuantile(double share) {
        if (errors.isEmpty()) {
            return 0;
        }
        List<Double> sorted = errors.stream().sorted().toList();
        double place = share * (sorted.size() - 1);
        int below = (int) place;
        double next = sorted.get(Math.min(below + 1, sorted.size() - 1));
        return sorted.get(below) + (next - sorted.get(below)) * (place - below);
    }
}
