package wallplate.stroke;

/**
 * What decides which ridges of ink become a stroke.
 *
 * @param faintestInk ink from which a ridge is looked at, from 0 to 255; below about 15 the paper's own grain comes in
 * @param prominence share of a ridge's ink by which it must stand above both sides; smaller tells closer lines apart
 * @param gateMm how far a ridge may lie from where its track foresees it
 * @param bridgedGapMm how long a track may go without a ridge
 * @param mergedGapMm how far apart the ends of two pieces of one line may lie
 * @param sameLineMm how far beside one another two pieces of one line may lie; lines are drawn at least 0.7 mm apart
 *     (ISO 128), so half of that is one line gone over twice
 * @param fewestRidges how many ridges make a track
 * @param shortestMm the shortest stroke given back
 */
public record StrokeSettings(
        double faintestInk,
        double prominence,
        double gateMm,
        double bridgedGapMm,
        double mergedGapMm,
        double sameLineMm,
        int fewestRidges,
        double shortestMm) {

    public static StrokeSettings usual() {
        return new StrokeSettings(18, 0.3, 0.22, 2.5, 5, 0.35, 3, 1.5);
    }
}
