package wallplate.solver;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import wallplate.solver.Slip.Formula;
import wallplate.solver.Slip.Reach;
import wallplate.solver.Slip.Reading;

/**
 * The known slips. A new one is one entry of {@link #ALL}: its id, name, reach, keys, formula and sentence.
 *
 * <p>Formulas work on paper millimetres and degrees. Which slips learners make is common practice of the drawing class,
 * with no published source.
 */
public final class SlipCatalogue {

    /** The id of what is named where a wrong size is just any other: the size of another part, or a wrong division. */
    public static final String ANY_OTHER_SIZE = "wrong-size";

    /** Scales that stand on rulers and in textbooks; the right one is left out for each task. */
    private static final List<Integer> SCALES = List.of(5, 10, 15, 20, 25, 30, 50, 100);

    /** Scales of the plans that a brief's sizes are taken from. */
    private static final List<Integer> PLAN_SCALES = List.of(50, 100);

    /** Keys whose sizes are read off a plan. */
    private static final Set<String> ON_PLAN = Set.of("wall.thickness", "rafter.overhang", "post.position");

    /**
     * Under this length in millimetres on paper the other scales lie so close together that any wrong size would fit
     * one of them.
     */
    private static final double SHORTEST_FOR_SCALES = 15;

    /** How far off, in millimetres on paper, a size must be before it counts as another size and not as careless. */
    private static final double CLEARLY_OFF = 1.5;

    /**
     * Nearer to the right size than an eighth of it, no wrong division and no other part's size is told from a careless hand; nor,
     * because a hand strays by no more on a long line than on a short one, where it is not clearly off.
     */
    private static final double LEAST_SHARE_OFF = 0.125;

    private static final Map<String, String> SWAPPED = Map.ofEntries(
            Map.entry("wall-plate.width", "wall-plate.depth"),
            Map.entry("wall-plate.depth", "wall-plate.width"),
            Map.entry("support.width", "support.depth"),
            Map.entry("support.depth", "support.width"),
            Map.entry("gutter.width", "gutter.depth"),
            Map.entry("gutter.depth", "gutter.width"),
            Map.entry("brander.width", "brander.depth"),
            Map.entry("brander.depth", "brander.width"));

    private static final String MEASURED_PLUMB =
            "The {what} is {drawn} mm; {asked} mm is asked. It seems that it was measured upright: lay the set"
                    + " square on the slope and measure square to it.";

    private static final List<Slip> ALL = List.of(
            new Slip(
                    "pitch-ten-off",
                    "ten degrees out on the protractor",
                    Reach.PARTICULAR,
                    keys("roof.pitch"),
                    values(size -> size - 10, size -> size + 10),
                    "The pitch is {drawn}°, ten degrees from {asked}°. Count the tens on the protractor once more,"
                            + " from 0 at the level line, and then the single degrees."),
            new Slip(
                    "pitch-complement",
                    "pitch set off from the upright",
                    Reach.PARTICULAR,
                    keys("roof.pitch"),
                    values(size -> 90 - size),
                    "The pitch is {drawn}°, which is what {asked}° from the upright gives. Set the angle off from the"
                            + " level line."),
            new Slip(
                    "pitch-supplement",
                    "other row of figures on the protractor",
                    Reach.SELDOM,
                    keys("roof.pitch"),
                    values(size -> 180 - size),
                    "The pitch is {drawn}°, which is {asked}° on the protractor's other row of figures. Use the row"
                            + " that begins with 0 at your level line."),
            new Slip(
                    "pitch-misread",
                    "protractor misread by a few degrees",
                    Reach.LOOSE,
                    keys("roof.pitch"),
                    around(1.5, 8),
                    "The pitch is {drawn}°; {asked}° is asked. It looks as if the protractor was read a few degrees"
                            + " out: lay its base along the level line, its centre on the heel point, and count the"
                            + " degrees from the nearest ten."),
            new Slip(
                    "overhang-along-slope",
                    "overhang measured along the slope",
                    Reach.PARTICULAR,
                    keys("rafter.overhang"),
                    (expected, size, drawing) -> List.of(Reading.exactly(size * cosine(drawing))),
                    "The overhang is {drawn} mm measured level; {asked} mm is asked. It seems that {asked} mm was"
                        + " measured along the rafter: measure it level, from the outer wall face to the plumb cut."),
            new Slip(
                    "overhang-from-plate",
                    "overhang measured from the wall plate",
                    Reach.SELDOM,
                    keys("rafter.overhang"),
                    (expected, size, drawing) -> setIn(drawing)
                            .map(setIn -> Reading.exactly(size - setIn))
                            .toList(),
                    "The overhang is {drawn} mm from the outer wall face; {asked} mm is asked. It seems that it was"
                            + " measured from the wall plate: begin at the outer face of the wall."),
            new Slip(
                    "overhang-to-fascia",
                    "overhang measured to the fascia's outer face",
                    Reach.SELDOM,
                    keys("rafter.overhang"),
                    (expected, size, drawing) -> mm(drawing, "fascia.thickness")
                            .map(fascia -> Reading.exactly(size - fascia))
                            .toList(),
                    "The overhang is {drawn} mm to the rafter's plumb cut; {asked} mm is asked. It seems that the"
                            + " fascia was counted in: the fascia comes on the outside of the plumb cut."),
            new Slip(
                    "depth-plumb",
                    "depth measured plumb instead of square to the slope",
                    Reach.PARTICULAR,
                    keys("rafter.depth"),
                    SlipCatalogue::plumb,
                    MEASURED_PLUMB),
            new Slip(
                    "depth-plumb",
                    "depth measured plumb instead of square to the slope",
                    Reach.SELDOM,
                    keys("support.depth", "covering.thickness", "covering.gap"),
                    SlipCatalogue::plumb,
                    MEASURED_PLUMB),
            new Slip(
                    "depth-square",
                    "plumb depth measured square to the slope",
                    Reach.SELDOM,
                    keys("barge-board.depth"),
                    (expected, size, drawing) -> List.of(Reading.exactly(size / cosine(drawing))),
                    "The {what} is {drawn} mm measured plumb; {asked} mm is asked. It seems that it was measured square"
                            + " to the slope: this one is measured upright."),
            new Slip(
                    "spacing-level",
                    "spacing measured level instead of along the slope",
                    Reach.PARTICULAR,
                    keys("support.spacing"),
                    (expected, size, drawing) -> List.of(Reading.exactly(size / cosine(drawing))),
                    "The {supports} are {drawn} mm apart along the slope; {asked} mm is asked. It seems that {asked}"
                            + " mm was measured level: step the spacing off along the rafter's top."),
            new Slip(
                    "spacing-clear",
                    "spacing measured between faces instead of centres",
                    Reach.PARTICULAR,
                    keys("support.spacing", "brander.spacing"),
                    (expected, size, drawing) -> mm(drawing, expected.key().replace(".spacing", ".width"))
                            .map(width -> Reading.exactly(size + width))
                            .toList(),
                    "The {what} is {drawn} mm from centre to centre; {asked} mm is asked. It seems that {asked} mm was"
                            + " left clear between them: measure from the centre of one to the centre of the next."),
            new Slip(
                    "projection-level",
                    "projection measured level instead of along the slope",
                    Reach.SELDOM,
                    keys("covering.projection"),
                    (expected, size, drawing) -> List.of(Reading.exactly(size / cosine(drawing))),
                    "The covering runs {drawn} mm past the toe along the slope; {asked} mm is asked. It seems that it"
                            + " was measured level: measure it along the slope."),
            new Slip(
                    "ceiling-underside",
                    "ceiling measured to the underside of its board",
                    Reach.SELDOM,
                    keys("ceiling.drop"),
                    (expected, size, drawing) -> List.of(Reading.exactly(size
                            - drawing.task()
                                    .scale()
                                    .onPaper(drawing.task().sizes().number("ceiling.board")))),
                    "The ceiling board's top is {drawn} mm under the tie beam; {asked} mm is asked. It seems that the"
                        + " board was counted in: the branders fill the whole distance, the board comes under them."),
            new Slip(
                    "position-to-face",
                    "post set out to its face instead of its centre",
                    Reach.SELDOM,
                    keys("post.position"),
                    (expected, size, drawing) -> mm(drawing, "post.width")
                            .flatMap(width -> Stream.of(size - width / 2, size + width / 2))
                            .map(Reading::exactly)
                            .toList(),
                    "The first post's centre is at {drawn} mm; {asked} mm is asked. It seems that a side of the post"
                            + " was put there: mark its centre line first, then half its width to each side."),
            new Slip(
                    "wrong-datum",
                    "posts set out from the wrong line of the wall",
                    Reach.SELDOM,
                    keys("post.position"),
                    (expected, size, drawing) -> mm(drawing, "wall.thickness")
                            .map(wall -> Reading.exactly(size + (fromCentreLine(drawing) ? -wall / 2 : wall / 2)))
                            .toList(),
                    "The first post is at {drawn} mm; {asked} mm is asked. It seems that it was set out from another"
                            + " line of the wall: look once more from where the spaces are counted."),
            new Slip(
                    "space-count-off",
                    "span divided into one space too many or too few",
                    Reach.SELDOM,
                    keys("post.position"),
                    (expected, size, drawing) -> {
                        double spaces = drawing.task().sizes().number("posts.equal-spaces");
                        return List.of(
                                Reading.exactly(size * spaces / (spaces + 1)),
                                Reading.exactly(size * spaces / (spaces - 1)));
                    },
                    "The first post is at {drawn} mm; {asked} mm is asked. It seems that the span was divided into one"
                            + " space too many or too few: count the spaces, not the posts."),
            new Slip(
                    "off-the-heel",
                    "rafter not through the heel point",
                    Reach.PARTICULAR,
                    keys("rafter.heel-offset"),
                    SlipCatalogue::otherCorners,
                    "The rafter's underside misses the heel point by {drawn} mm{detail}. It passes through the top"
                            + " outer corner of the wall plate: mark that corner first and draw the slope through it."),
            new Slip(
                    "off-the-heel",
                    "rafter not through the heel point",
                    Reach.LOOSE,
                    keys("rafter.heel-offset"),
                    byDoublings(1, 64),
                    "The rafter's underside misses the heel point by {drawn} mm. It passes through the top outer"
                            + " corner of the wall plate: mark that corner first and draw the slope through it."),
            new Slip(
                    "half-size",
                    "half the size",
                    Reach.GENERAL,
                    SlipCatalogue::isLength,
                    values(size -> size / 2),
                    "The {what} is {drawn} mm, about half of the {asked} mm asked. Divide the real size by the scale"
                            + " once, and measure the result with the millimetre side of the ruler."),
            new Slip(
                    "double-size",
                    "double the size",
                    Reach.GENERAL,
                    SlipCatalogue::isLength,
                    values(size -> size * 2),
                    "The {what} is {drawn} mm, about twice the {asked} mm asked. Divide the real size by the whole of"
                            + " the scale's number, and measure the result with the millimetre side of the ruler."),
            new Slip(
                    "width-depth-swapped",
                    "width and depth swapped",
                    Reach.GENERAL,
                    expected -> SWAPPED.containsKey(expected.key()),
                    SlipCatalogue::otherSide,
                    "The {what} is {drawn} mm; {asked} mm is asked. It seems that width and depth have changed places:"
                            + " look in the brief which of the two sizes is which."),
            new Slip(
                    "plan-scale",
                    "size taken from the plan without converting it",
                    Reach.GENERAL,
                    expected -> ON_PLAN.contains(expected.key()),
                    (expected, size, drawing) -> atScales(size, drawing, PLAN_SCALES),
                    "The {what} is {drawn} mm; {asked} mm is asked. {detail} Turn a length from the plan into its real"
                            + " size first, then divide by this drawing's scale."),
            new Slip(
                    "wrong-scale",
                    "measured at another scale",
                    Reach.SELDOM,
                    expected -> isLength(expected) && ((Expected.Length) expected).exactMm() >= SHORTEST_FOR_SCALES,
                    (expected, size, drawing) -> atScales(
                            size,
                            drawing,
                            ON_PLAN.contains(expected.key())
                                    ? SCALES.stream()
                                            .filter(scale -> !PLAN_SCALES.contains(scale))
                                            .toList()
                                    : SCALES),
                    "The {what} is {drawn} mm; {asked} mm is asked. {detail} Check the scale in the title block before"
                            + " dividing."),
            new Slip(
                    ANY_OTHER_SIZE,
                    "the size of another part, or a wrong division",
                    Reach.BORROWED,
                    SlipCatalogue::isLength,
                    SlipCatalogue::otherParts,
                    "The {what} is {drawn} mm; {asked} mm is asked. {detail} Look in the brief whether the size of"
                            + " another part was taken, and check the division."),
            new Slip(
                    ANY_OTHER_SIZE,
                    "the size of another part, or a wrong division",
                    Reach.LOOSE,
                    SlipCatalogue::isLength,
                    SlipCatalogue::anythingElse,
                    "The {what} is {drawn} mm; {asked} mm is asked. Look in the brief whether the size of"
                            + " another part was taken, and check the division."),
            new Slip(
                    "mirrored",
                    "drawn the other way round",
                    Reach.PARTICULAR,
                    keys("drawing.eaves"),
                    (expected, size, drawing) -> List.of(),
                    "The eaves are on the {drawn}; the task asks for them on the {asked}. The drawing is right way"
                            + " round when the overhang lies on the {asked} of the sheet."),
            new Slip(
                    "not-crossed",
                    "cut timber without diagonals",
                    Reach.PARTICULAR,
                    expected -> expected.key().endsWith(".crossed"),
                    (expected, size, drawing) -> List.of(),
                    "The {what} are missing. Timber that is cut across the grain is shown by two crossing diagonals in"
                            + " its outline."),
            new Slip(
                    "not-hatched",
                    "cut walling without hatching",
                    Reach.PARTICULAR,
                    expected -> expected.key().endsWith(".hatched"),
                    (expected, size, drawing) -> List.of(),
                    "The {what} is missing. Walling that is cut is shown by parallel lines at 45 degrees."));

    private SlipCatalogue() {}

    /** Every known slip; one id may stand twice, once with values of its own and once as the loose rest. */
    public static List<Slip> all() {
        return ALL;
    }

    /** The key that is spoiled together with another by one slip, as when width and depth change places. */
    static Optional<String> partner(Slip slip, String key) {
        return slip.id().equals("width-depth-swapped") ? Optional.ofNullable(SWAPPED.get(key)) : Optional.empty();
    }

    private interface Function {
        double of(double size);
    }

    private static Predicate<Expected> keys(String... keys) {
        Set<String> known = Set.of(keys);
        return expected -> known.contains(expected.key());
    }

    private static boolean isLength(Expected expected) {
        return expected instanceof Expected.Length length && length.exactMm() > 0;
    }

    private static Formula values(Function... functions) {
        return (expected, size, drawing) -> Stream.of(functions)
                .map(function -> Reading.exactly(function.of(size)))
                .toList();
    }

    /** Anything between two distances from the right value, on either side of it. */
    private static Formula around(double nearest, double farthest) {
        return (expected, size, drawing) -> List.of(
                Reading.between(size - farthest, size - nearest), Reading.between(size + nearest, size + farthest));
    }

    /** Anything between two distances from the right value, on either side of it, as likely within each doubling. */
    private static Formula byDoublings(double nearest, double farthest) {
        return (expected, size, drawing) -> DoubleStream.iterate(nearest, distance -> distance < farthest, distance -> 2 * distance)
                .boxed()
                .flatMap(distance -> Stream.of(
                        Reading.between(size - 2 * distance, size - distance),
                        Reading.between(size + distance, size + 2 * distance)))
                .toList();
    }

    /** The sizes of other parts. Which of them a hand cannot have meant by straying is told when they are weighed. */
    private static List<Reading> otherParts(Expected expected, double size, ExpectedDrawing drawing) {
        return Solver.keys(drawing.task()).stream()
                .filter(other -> other.kind() == MeasuredKey.Kind.SECTION_SIZE
                        && !other.key().equals(expected.key()))
                .flatMap(other -> mm(drawing, other.key())
                        .filter(value -> value != size)
                        .map(value -> Reading.exactly(value, "It has the " + other.labelFor(drawing.task()) + ".")))
                .toList();
    }

    /**
     * Whatever comes of a wrong division: a third of the size to three times it, but clearly another size. How far off it
     * lies is as likely within each doubling of the distance.
     */
    private static List<Reading> anythingElse(Expected expected, double size, ExpectedDrawing drawing) {
        List<Reading> readings = new ArrayList<>();
        double exact = ((Expected.Length) expected).exactMm();
        double rounded = Slips.drawnSize(expected);
        double least = Math.min(exact * LEAST_SHARE_OFF, CLEARLY_OFF);
        for (double distance = least; distance < 2 * exact; distance *= 2) {
            double below = Math.min(exact, rounded) - distance;
            double above = Math.max(exact, rounded) + distance;
            if (below > exact / 3) {
                readings.add(Reading.between(Math.max(exact / 3, below - distance), below));
            }
            readings.add(Reading.between(above, above + Math.min(distance, 2 * exact - distance)));
        }
        return readings;
    }

    /**
     * The size of the other side, exact or rounded: which of the two is drawn does not hang on this side's own
     * size.
     */
    private static List<Reading> otherSide(Expected expected, double size, ExpectedDrawing drawing) {
        Optional<Expected> other = drawing.value(SWAPPED.get(expected.key()));
        return other.isPresent() && other.get() instanceof Expected.Length length
                ? Stream.of(length.exactMm(), length.drawnMm())
                        .filter(value -> value > 0)
                        .distinct()
                        .map(Reading::exactly)
                        .toList()
                : List.of();
    }

    /** By how much a drawing would be larger than asked at each of the other usual scales, for a scale of 1 to a denominator. */
    public static List<Double> factorsAtOtherScales(double denominator) {
        return SCALES.stream()
                .filter(scale -> scale != denominator)
                .map(scale -> denominator / scale)
                .toList();
    }

    private static List<Reading> atScales(double size, ExpectedDrawing drawing, List<Integer> scales) {
        double right = drawing.task().scale().denominator();
        return scales.stream()
                .filter(scale -> scale != right)
                .map(scale -> Reading.exactly(size * right / scale, "That is its length at 1:" + scale + "."))
                .toList();
    }

    private static List<Reading> otherCorners(Expected expected, double size, ExpectedDrawing drawing) {
        double cosine = cosine(drawing);
        double sine = Math.sqrt(1 - cosine * cosine);
        Stream<Reading> innerTop = mm(drawing, "wall-plate.width")
                .map(width -> Reading.exactly(-width * sine, ": it goes through the plate's top inner corner"));
        Stream<Reading> outerBottom = mm(drawing, "wall-plate.depth")
                .map(depth -> Reading.exactly(-depth * cosine, ": it goes through the plate's bottom outer corner"));
        Stream<Reading> wallFace = setIn(drawing)
                .map(setIn -> Reading.exactly(
                        setIn * sine, ": it meets the outer wall face at the level of the plate's top"));
        return Stream.of(innerTop, outerBottom, wallFace)
                .flatMap(stream -> stream)
                .toList();
    }

    private static List<Reading> plumb(Expected expected, double size, ExpectedDrawing drawing) {
        return List.of(Reading.exactly(size * cosine(drawing)));
    }

    private static double cosine(ExpectedDrawing drawing) {
        return Math.cos(Math.toRadians(drawing.task().sizes().number("pitch")));
    }

    private static Stream<Double> mm(ExpectedDrawing drawing, String key) {
        return drawing
                .value(key)
                .filter(Expected.Length.class::isInstance)
                .map(value -> ((Expected.Length) value).exactMm())
                .stream();
    }

    /** The plate's set-in on paper, where the plate is set in at all. */
    private static Stream<Double> setIn(ExpectedDrawing drawing) {
        return drawing.lines().stream()
                .filter(line -> line.part().equals("wall") && line.edge().equals("outer"))
                .map(line -> -line.segment().start().x())
                .filter(setIn -> setIn > 0);
    }

    private static boolean fromCentreLine(ExpectedDrawing drawing) {
        return drawing.task().sizes().word("posts.set-out-from").orElse("").equals("wall-centre");
    }
}
