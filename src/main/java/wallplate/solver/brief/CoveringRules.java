package wallplate.solver.brief;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import wallplate.solver.Advice;
import wallplate.solver.ExpectedDrawing;
import wallplate.task.PlainNumber;
import wallplate.task.Sizes;

/** Coverings known by a word in their name: the least pitch and the widest support spacing that are usual for them. */
final class CoveringRules implements BriefRule {

    private static final String DOUBLE_ROMAN = "Marley Roofing SA, Double Roman data sheet (a maker's limit)";
    private static final String SLATING =
            "Rivington, Notes on Building Construction, chapter XIII, Slating: ordinary slates not under 26 1/2"
                    + " degrees";
    private static final String IBR = "IBR roof sheeting, supplier's brochure (a supplier's limit)";
    private static final String IBR_PURLINS =
            "IBR roof sheeting 0.50 mm, supplier's table: purlins 1.65 m apart on a single span";
    private static final String IRC = "IRC 2024, section R905, minimum slopes (read in a summary)";
    private static final String PLAIN_TILE = "maker's data for plain tiles of 268 x 165 mm (read second hand)";

    /** The first line whose word stands in the covering's name counts. */
    private static final List<Covering> COVERINGS = List.of(
            new Covering("plain tile", 35, PLAIN_TILE, Double.MAX_VALUE, ""),
            new Covering("slate", 26.5, SLATING, Double.MAX_VALUE, ""),
            new Covering("tile", 17.5, DOUBLE_ROMAN, 345, DOUBLE_ROMAN),
            new Covering("ibr", 5, IBR, 1650, IBR_PURLINS),
            new Covering("metal shingle", slope(3), IRC, Double.MAX_VALUE, ""),
            new Covering("shingle", slope(2), IRC, Double.MAX_VALUE, ""));

    /** Under this pitch, in degrees, tile battens stand closer, in real millimetres. */
    private static final double STEEP_TILES = 26;

    private static final double CLOSE_BATTENS = 320;

    private record Covering(
            String word, double leastPitch, String pitchSource, double widestSpacing, String spacingSource) {}

    private static double slope(double riseInTwelve) {
        return Math.toDegrees(Math.atan(riseInTwelve / 12));
    }

    @Override
    public Stream<Advice> advice(ExpectedDrawing drawing) {
        Sizes sizes = drawing.task().sizes();
        String name = sizes.word("covering.name").orElse("").toLowerCase(Locale.ROOT);
        Optional<Covering> covering =
                COVERINGS.stream().filter(known -> name.contains(known.word)).findFirst();
        return covering.stream().flatMap(known -> Stream.concat(pitch(known, sizes), spacing(known, sizes)));
    }

    private static Stream<Advice> pitch(Covering covering, Sizes sizes) {
        double pitch = sizes.number("pitch");
        return pitch >= covering.leastPitch
                ? Stream.empty()
                : Stream.of(new Advice(
                        "pitch",
                        "A pitch of %s° is under the usual minimum of %s° for this covering."
                                .formatted(PlainNumber.text(pitch), PlainNumber.text(covering.leastPitch, 1)),
                        covering.pitchSource));
    }

    private static Stream<Advice> spacing(Covering covering, Sizes sizes) {
        double spacing = sizes.number("support.spacing");
        boolean flatTiles = covering.word.equals("tile") && sizes.number("pitch") < STEEP_TILES;
        double widest = flatTiles ? CLOSE_BATTENS : covering.widestSpacing;
        return spacing <= widest
                ? Stream.empty()
                : Stream.of(new Advice(
                        "support.spacing",
                        "A spacing of %s mm is wider than the usual %s mm for this covering at this pitch."
                                .formatted(PlainNumber.text(spacing), PlainNumber.text(widest)),
                        covering.spacingSource));
    }
}
