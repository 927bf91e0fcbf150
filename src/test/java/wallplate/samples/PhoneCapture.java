package wallplate.samples;

import java.util.LinkedHashMap;
import java.util.Map;
import wallplate.geometry.Point;

/**
 * A photograph with a telephone held by hand over a sheet on a desk.
 *
 * @param leanDegrees how far the telephone leans from looking straight down, about the sheet's two axes
 * @param turnDegrees by how much the telephone is turned about its line of sight
 * @param fill share of the picture's width or height that the sheet takes
 * @param k1 radial distortion at the picture's corner, as a share
 * @param shine how strongly graphite shines where the lamp is mirrored, 0 for not at all
 * @param shadow how dark a shadow of hand or telephone falls over the sheet, 0 for none
 */
record PhoneCapture(
        int widthPx,
        int heightPx,
        double leanXDegrees,
        double leanYDegrees,
        double turnDegrees,
        double fill,
        double k1,
        double blurPx,
        double noiseLevels,
        double unevenness,
        double shine,
        double shadow) {

    static PhoneCapture draw(Chance chance) {
        boolean large = chance.happens(0.7);
        return new PhoneCapture(
                large ? 4032 : 3264,
                large ? 3024 : 2448,
                chance.error(5),
                chance.error(5),
                chance.error(3) + chance.oneOf(0, 0, 0, 0, 90, 180, 270),
                chance.between(0.74, 0.93),
                chance.error(0.006),
                chance.between(0.7, 1.5),
                chance.between(1.5, 5),
                chance.between(0.05, 0.4),
                chance.happens(0.35) ? chance.between(0.4, 1.1) : 0,
                chance.happens(0.4) ? chance.between(0.1, 0.4) : 0);
    }

    PhoneCapture withBlur(double otherPx) {
        return new PhoneCapture(
                widthPx, heightPx, leanXDegrees, leanYDegrees, turnDegrees, fill, k1, otherPx, noiseLevels, unevenness,
                shine, shadow);
    }

    Capture take(SheetDrawing sheet, Chance chance) {
        boolean upright = !sheet.paper().landscape();
        int across = upright ? heightPx : widthPx;
        int down = upright ? widthPx : heightPx;
        boolean turned = Math.abs(Math.abs(turnDegrees) - 90) < 30 || Math.abs(turnDegrees - 270) < 30;
        int width = turned ? down : across;
        int height = turned ? across : down;
        PhoneMap map = new PhoneMap(homography(sheet.paper(), width, height, chance), k1, width, height);
        Exposure exposure = expose(sheet, map, width, height, chance);
        exposure.blur(blurPx);
        double[] tint = {1, chance.between(0.93, 1), chance.between(0.82, 0.99)};
        return new Capture(exposure.develop(noiseLevels, tint, chance), map, condition(sheet));
    }

    private double[] homography(Paper paper, int width, int height, Chance chance) {
        double focal = 0.8 * Math.max(width, height);
        double[][] turn = multiply(aboutZ(turnDegrees), multiply(aboutX(leanXDegrees), aboutY(leanYDegrees)));
        double shiftX = chance.error(0.012) * width;
        double shiftY = chance.error(0.012) * height;
        for (double distance = 0.55 * focal * paper.width() / width; ; distance *= 1.01) {
            double[] h = new double[9];
            for (int row = 0; row < 3; row++) {
                double alongX = turn[row][0];
                double alongY = -turn[row][1];
                double fixed = -turn[row][0] * paper.width() / 2 + turn[row][1] * paper.height() / 2;
                h[3 * row] = alongX;
                h[3 * row + 1] = alongY;
                h[3 * row + 2] = fixed + (row == 2 ? distance : 0);
            }
            for (int column = 0; column < 3; column++) {
                h[column] = focal * h[column] + (width / 2.0 + shiftX) * h[6 + column];
                h[3 + column] = focal * h[3 + column] + (height / 2.0 + shiftY) * h[6 + column];
            }
            if (holds(new PhoneMap(h, k1, width, height), paper, width, height)) {
                return h;
            }
        }
    }

    /** Whether the whole sheet, with the wished margin, is in the picture. */
    private boolean holds(PhoneMap map, Paper paper, int width, int height) {
        double marginX = (1 - fill) / 2 * width * 0.7;
        double marginY = (1 - fill) / 2 * height * 0.7;
        for (int corner = 0; corner < 4; corner++) {
            Point place = map.toPixels(corner % 2 == 0 ? 0 : paper.width(), corner / 2 == 0 ? 0 : paper.height());
            if (place.x() < marginX || place.x() > width - marginX || place.y() < marginY || place.y() > height - marginY) {
                return false;
            }
        }
        return true;
    }

    private static double[][] aboutX(double degrees) {
        double c = Math.cos(Math.toRadians(degrees));
        double s = Math.sin(Math.toRadians(degrees));
        return new double[][] {{1, 0, 0}, {0, c, -s}, {0, s, c}};
    }

    private static double[][] aboutY(double degrees) {
        double c = Math.cos(Math.toRadians(degrees));
        double s = Math.sin(Math.toRadians(degrees));
        return new double[][] {{c, 0, s}, {0, 1, 0}, {-s, 0, c}};
    }

    private static double[][] aboutZ(double degrees) {
        double c = Math.cos(Math.toRadians(degrees));
        double s = Math.sin(Math.toRadians(degrees));
        return new double[][] {{c, -s, 0}, {s, c, 0}, {0, 0, 1}};
    }

    private static double[][] multiply(double[][] one, double[][] other) {
        double[][] product = new double[3][3];
        for (int row = 0; row < 3; row++) {
            for (int column = 0; column < 3; column++) {
                for (int at = 0; at < 3; at++) {
                    product[row][column] += one[row][at] * other[at][column];
                }
            }
        }
        return product;
    }

    private Exposure expose(SheetDrawing sheet, PhoneMap map, int width, int height, Chance chance) {
        Grain grain = new Grain(chance.seed());
        GraphiteLayer graphite = new GraphiteLayer(width, height, map, grain);
        sheet.strokes().forEach(graphite::draw);
        sheet.smudges().forEach(graphite::smudge);
        PaperSurface surface = new PaperSurface(sheet, grain, 0.01, 0.2);
        Desk desk = Desk.draw(grain, chance);
        Lamp lamp = new Lamp(sheet.paper(), unevenness, shadow, grain, chance);
        double paperTone = chance.between(0.72, 0.93);
        Exposure exposure = new Exposure(width, height);
        double spotX = sheet.paper().width() * chance.between(0.2, 0.8);
        double spotY = sheet.paper().height() * chance.between(0.3, 0.8);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int at = y * width + x;
                Point place = map.toSheet(x + 0.5, y + 0.5);
                double covered = surface.covers(place);
                double taken = graphite.taken(at) * 0.93;
                double spot = shine * Math.exp(-(square(place.x() - spotX) + square(place.y() - spotY)) / 3200);
                double reflected = 1 - taken + spot * taken * taken * taken * 1.35;
                double paper = covered == 0 ? 0 : paperTone * surface.tone(place) * reflected;
                double around = covered == 1 ? 0 : desk.tone(place) * (1 - surface.shadow(place, 2, 0.5));
                exposure.light[at] = (float) ((covered * paper + (1 - covered) * around) * lamp.at(place));
            }
        }
        return exposure;
    }

    private static double square(double value) {
        return value * value;
    }

    private Map<String, Object> condition(SheetDrawing sheet) {
        Map<String, Object> condition = new LinkedHashMap<>();
        condition.put("kind", "photo");
        condition.put("megapixels", Math.round(widthPx * heightPx / 1e5) / 10.0);
        condition.put("tilt", FlatbedCapture.rounded(Math.hypot(leanXDegrees, leanYDegrees)));
        condition.put("turn", FlatbedCapture.rounded(turnDegrees));
        condition.put("k1", Math.round(k1 * 1e4) / 1e4);
        condition.put("tilt-of-drawing", FlatbedCapture.rounded(sheet.tiltDegrees()));
        condition.put("blur", FlatbedCapture.rounded(blurPx));
        condition.put("shine", FlatbedCapture.rounded(shine));
        condition.put("shadow", FlatbedCapture.rounded(shadow));
        return condition;
    }
}
