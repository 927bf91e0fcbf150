package wallplate.sheet.page;

/** Small systems of linear equations. */
final class LinearSystem {

    private LinearSystem() {}

    /**
     * Solves n equations given as n rows of n coefficients and the right side, by elimination with pivots; the rows are
     * used up. A variable that the equations do not fix is 0.
     */
    static double[] solve(double[][] rows) {
        int n = rows.length;
        for (int column = 0; column < n; column++) {
            int pivot = column;
            for (int row = column + 1; row < n; row++) {
                if (Math.abs(rows[row][column]) > Math.abs(rows[pivot][column])) {
                    pivot = row;
                }
            }
            double[] swapped = rows[column];
            rows[column] = rows[pivot];
            rows[pivot] = swapped;
            if (rows[column][column] == 0) {
                continue;
            }
            for (int row = 0; row < n; row++) {
                if (row == column) {
                    continue;
                }
                double factor = rows[row][column] / rows[column][column];
                for (int k = column; k <= n; k++) {
                    rows[row][k] -= factor * rows[column][k];
                }
            }
        }
        double[] solution = new double[n];
        for (int i = 0; i < n; i++) {
            solution[i] = rows[i][i] == 0 ? 0 : rows[i][n] / rows[i][i];
        }
        return solution;
    }
}
