package wallplate.stroke;

import java.util.ArrayList;
import java.util.List;

/** Ridges that follow one another along a straight line, in columns and rows of a {@link ParallelScan}. */
final class Track {

    /** From this many ridges on the track's own slope is trusted. */
    private static final int STEADY = 12;

    private final List<double[]> ridges = new ArrayList<>();
    private double weight;
    private double sumColumn;
    private double sumRow;
    private double sumColumnColumn;
    private double sumColumnRow;
    private int first;
    private int last;

    Track(int column, double row, double ink) {
        first = column;
        last = column;
        add(column, row, ink);
    }

    void add(int column, double row, double ink) {
        ridges.add(new double[] {column, row, ink});
        weight += ink;
        sumColumn += ink * column;
        sumRow += ink * row;
        sumColumnColumn += ink * column * column;
        sumColumnRow += ink * column * row;
        first = Math.min(first, column);
        last = Math.max(last, column);
    }

    void absorb(Track other) {
        for (double[] ridge : other.ridges) {
            add((int) ridge[0], ridge[1], ridge[2]);
        }
    }

    int size() {
        return ridges.size();
    }

    int firstColumn() {
        return first;
    }

    int lastColumn() {
        return last;
    }

    int columnsSpanned() {
        return last - first + 1;
    }

    double meanRow() {
        return sumRow / weight;
    }

    /** Where the track runs at a column: along its line of least squares once it is steady, level before. */
    double rowAt(double column) {
        double meanColumn = sumColumn / weight;
        if (ridges.size() < STEADY) {
            int recent = Math.min(3, ridges.size());
            double sum = 0;
            for (int back = 1; back <= recent; back++) {
                sum += ridges.get(ridges.size() - back)[1];
            }
            return sum / recent;
        }
        double spread = sumColumnColumn - sumColumn * meanColumn;
        double slope = spread <= 0 ? 0 : (sumColumnRow - sumColumn * meanRow()) / spread;
        return meanRow() + slope * (column - meanColumn);
    }

    /** A young track's foresight is poor, and so is one across a gap. */
    double gateFactor(int column) {
        return ridges.size() < STEADY ? 1.0 : Math.min(1.6, 1 + 0.1 * (column - last));
    }

    /** Whether a track of a few ridges has already met as many gaps: then it is noise and is not carried on. */
    boolean isSpent(int column) {
        return column - last > ridges.size();
    }

    double residualRows() {
        double sum = 0;
        for (double[] ridge : ridges) {
            double off = ridge[1] - rowAt(ridge[0]);
            sum += ridge[2] * off * off;
        }
        return Math.sqrt(sum / weight);
    }
}
