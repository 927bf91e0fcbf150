package wallplate.samples;

/**
 * One movement of the pencil over the paper: points a fraction of a millimetre apart, with the pressure at each.
 *
 * @param x places on the sheet in millimetres
 * @param pressure 0 for a lifted pencil to about 1
 * @param darkness deposit at full pressure, 0 to 1
 * @param grain how strongly the paper's grain shows
 */
@SuppressWarnings("ArrayRecordComponent")
record PencilStroke(double[] x, double[] y, double[] pressure, double widthMm, double darkness, double grain) {}
