package wallplate.samples;

import java.util.LinkedHashMap;
import java.util.Map;
import wallplate.geometry.Point;

/**
 * A scan on a flatbed or through a feeder.
 *
 * @param turnDegrees by how much the finished picture is turned, a multiple of 90
 * @param stretch by how much the feeder stretches the page along its feed, as a share
 * @param edges whether the paper's edges are in the picture
 * @param trimMm how much of the paper's rim is cut away all round where its edges are not in the picture
 * @param surround the light around the paper, 0 black to 1 white
 */
record FlatbedCapture(
        int dpi,
        double rotationDegrees,
        int turnDegrees,
        double stretch,
        boolean edges,
        double trimMm,
        boolean colour,
        double surround,
        double paperTone,
        double blurMm,
        double sharpening,
        double noiseLevels,
        boolean streaks) {

    static FlatbedCapture draw(Chance chance) {
        int dpi = chance.oneOf(200, 300, 300, 300, 300, 400, 600);
        boolean feeder = chance.happens(0.4);
        return new FlatbedCapture(
                dpi,
                chance.error(chance.happens(0.15) ? 2 : 0.8),
                chance.oneOf(0, 0, 0, 0, 90, 180, 270),
                feeder ? chance.error(0.003) : 0,
                chance.happens(0.45),
                chance.happens(0.2) ? chance.between(1, 5) : 0,
                chance.happens(0.45),
                chance.oneOf(0.06, 0.1, 0.35, 0.97, 0.99),
                chance.between(0.86, 0.985),
                chance.between(0.03, 0.07),
                chance.happens(0.3) ? chance.between(0.2, 0.7) : 0,
                chance.between(1, 4.5),
                feeder && chance.happens(0.25));
    }

    FlatbedCapture atDpi(int other) {
        return new FlatbedCapture(
                other, rotationDegrees, turnDegrees, stretch, edges, trimMm, colour, surround, paperTone, blurMm, sharpening,
                noiseLevels, streaks);
    }

    FlatbedCapture withBlur(double otherMm) {
        return new FlatbedCapture(
                dpi, rotationDegrees, turnDegrees, stretch, edges, trimMm, colour, surround, paperTone, otherMm, sharpening,
                noiseLevels, streaks);
    }

    /** The same scan with so much of the paper's rim cut away that none of its edges is left. */
    FlatbedCapture trimmed() {
        return new FlatbedCapture(
                dpi, rotationDegrees / 4, turnDegrees, stretch, false, 5, colour, surround, paperTone, blurMm, sharpening,
                noiseLevels, streaks);
    }

    FlatbedCapture withEdges(boolean shown) {
        return new FlatbedCapture(
                dpi, rotationDegrees, turnDegrees, stretch, shown, trimMm, colour, shown ? Math.min(surround, 0.35) : surround, paperTone,
                blurMm, sharpening, noiseLevels, streaks);
    }

    Capture take(SheetDrawing sheet, Chance chance) {
        double perMm = dpi / 25.4;
        Paper paper = sheet.paper();
        double marginX = edges ? chance.between(3, 12) : chance.error(trimMm > 0 ? 0.2 : 1) - trimMm;
        double marginY = edges ? chance.between(3, 12) : chance.error(trimMm > 0 ? 0.2 : 1) - trimMm;
        double bedX = paper.width() + (edges ? marginX + chance.between(3, 10) : chance.error(0.8) - 2 * trimMm);
        double bedY = paper.height() + (edges ? marginY + chance.between(3, 10) : chance.error(0.8) - 2 * trimMm);
        boolean quarter = turnDegrees % 180 != 0;
        int bedWidthPx = (int) Math.round(bedX * perMm);
        int bedHeightPx = (int) Math.round(bedY * perMm);
        FlatbedMap level = new FlatbedMap(1, 0, -paper.width() / 2, 0, -1, paper.height() / 2);
        FlatbedMap map = level.then(FlatbedMap.rotation(rotationDegrees))
                .then(FlatbedMap.scaling(1, 1 + stretch))
                .then(FlatbedMap.shift(paper.width() / 2 + marginX, paper.height() / 2 + marginY))
                .then(FlatbedMap.scaling(perMm, perMm))
                .then(turn(bedWidthPx, bedHeightPx));
        int widthPx = quarter ? bedHeightPx : bedWidthPx;
        int heightPx = quarter ? bedWidthPx : bedHeightPx;
        Exposure exposure = expose(sheet, map, widthPx, heightPx, chance);
        exposure.blur(blurMm * perMm);
        if (sharpening > 0) {
            exposure.sharpen(sharpening);
        }
        double[] tint = {1, chance.between(0.985, 1), chance.between(0.955, 1)};
        return new Capture(exposure.develop(noiseLevels, colour ? tint : null, chance), map, condition(sheet));
    }

    private FlatbedMap turn(int widthPx, int heightPx) {
        return switch (turnDegrees) {
            case 90 -> new FlatbedMap(0, -1, heightPx, 1, 0, 0);
            case 180 -> new FlatbedMap(-1, 0, widthPx, 0, -1, heightPx);
            case 270 -> new FlatbedMap(0, 1, 0, -1, 0, widthPx);
            default -> FlatbedMap.shift(0, 0);
        };
    }

    private Exposure expose(SheetDrawing sheet, FlatbedMap map, int widthPx, int heightPx, Chance chance) {
        Grain grain = new Grain(chance.seed());
        GraphiteLayer graphite = new GraphiteLayer(widthPx, heightPx, map, grain);
        sheet.strokes().forEach(graphite::draw);
        sheet.smudges().forEach(graphite::smudge);
        PaperSurface surface = new PaperSurface(sheet, grain, 0.012, 0);
        Exposure exposure = new Exposure(widthPx, heightPx);
        double[] streak = streaks(widthPx, chance);
        for (int y = 0; y < heightPx; y++) {
            for (int x = 0; x < widthPx; x++) {
                int at = y * widthPx + x;
                Point place = map.toSheet(x + 0.5, y + 0.5);
                double covered = surface.covers(place);
                double paper = paperTone * surface.tone(place) * (1 - graphite.taken(at) * 0.93);
                double around = surround * (1 - surface.shadow(place, 2.5, 0.25));
                exposure.light[at] = (float) ((covered * paper + (1 - covered) * around) * streak[x]);
            }
        }
        return exposure;
    }

    private double[] streaks(int widthPx, Chance chance) {
        double[] streak = new double[widthPx];
        java.util.Arrays.fill(streak, 1);
        int count = streaks ? chance.whole(1, 3) : 0;
        for (int number = 0; number < count; number++) {
            int at = chance.whole(4, widthPx - 5);
            double dark = chance.between(0.03, 0.25);
            for (int x = at; x < at + chance.whole(1, 3); x++) {
                streak[x] -= dark;
            }
        }
        return streak;
    }

    private Map<String, Object> condition(SheetDrawing sheet) {
        Map<String, Object> condition = new LinkedHashMap<>();
        condition.put("kind", "scan");
        condition.put("dpi", dpi);
        condition.put("rotation", rounded(rotationDegrees));
        condition.put("edges", edges);
        condition.put("stretch", Math.round(stretch * 1e4) / 1e4);
        condition.put("turn", turnDegrees);
        condition.put("colour", colour);
        condition.put("tilt-of-drawing", rounded(sheet.tiltDegrees()));
        condition.put("streaks", streaks);
        condition.put("sharpening", rounded(sharpening));
        return condition;
    }

    static double rounded(double value) {
        return Math.round(value * 1000) / 1000.0;
    }
}
