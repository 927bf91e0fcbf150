package wallplate.samples;

/** Smooth seeded noise over the plane, between 0 and 1 with its mean at one half; it repeats every 512 cells. */
final class Grain {

    private static final int SIDE = 512;

    private final float[] cells = new float[SIDE * SIDE];

    Grain(long seed) {
        Chance chance = new Chance(seed);
        for (int cell = 0; cell < cells.length; cell++) {
            cells[cell] = (float) chance.between(0, 1);
        }
    }

    double at(double x, double y) {
        double floorX = Math.floor(x);
        double floorY = Math.floor(y);
        int left = (int) floorX & (SIDE - 1);
        int right = (left + 1) & (SIDE - 1);
        int low = ((int) floorY & (SIDE - 1)) * SIDE;
        int high = (((int) floorY + 1) & (SIDE - 1)) * SIDE;
        double fx = smooth(x - floorX);
        double fy = smooth(y - floorY);
        double bottom = cells[low + left] + (cells[low + right] - cells[low + left]) * fx;
        double top = cells[high + left] + (cells[high + right] - cells[high + left]) * fx;
        return bottom + (top - bottom) * fy;
    }

    private static double smooth(double fraction) {
        return fraction * fraction * (3 - 2 * fraction);
    }
}
