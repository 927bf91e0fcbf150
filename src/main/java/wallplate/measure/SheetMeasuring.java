package wallplate.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import wallplate.geometry.Angles;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.sheet.LevelPage;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.stroke.Edge;

/** The measuring of one sheet, from its view to its keys. */
final class SheetMeasuring {

    /** How truly a single line is laid against the T-square, one standard deviation; common practice, no source. */
    private static final double SQUARE_SIGMA_DEGREES = 0.09;

    /** The page's level was taken from the same lines, so it says little that is new. */
    private static final double PAGE_LEVEL_SIGMA_DEGREES = 0.1;

    /** How well a drawing's own level is known from its level and upright lines, as found on sheets whose level is known. */
    private static final double LEVEL_SIGMA_DEGREES = 0.07;

    /** Edges shorter than this, such as a board's closing lines, are little longer than a line is broad. */
    private static final double TINY_MM = 2.2;

    private static final double SHORT_MM = 6;

    /** Two lines cannot be drawn nearer to one another than this: a pencil's line is about as broad. */
    private static final double ONE_LINE_MM = 0.3;

    private static final String OTHER_ROW = "the lines in the row could be read as another row of boxes";

    private static final String IN_A_GAP = "there is ink in the row where another box would stand, but no clear box";

    /** At least so much of the weaker diagonal is there where both were drawn, however faintly. */
    private static final double CROSSED = 0.55;
    /** Not more than this looks like the weaker diagonal where none were drawn. */
    private static final double NOT_CROSSED = 0.42;

    private final DrawingView view;
    private final LevelPage page;
    private final ChoiceLog log;
    private Expectation expectation;
    private final Map<String, Measurement> found = new LinkedHashMap<>();
    private final Map<String, List<Segment>> parts = new LinkedHashMap<>();
    private final Map<String, Edge> edges = new LinkedHashMap<>();
    private final Pattern pattern;
    private RoofLines roof;
    private WallReader.Wall wall;
    private Optional<HighWallReader.HighWall> highWall = Optional.empty();
    private EavesReader.Eaves eaves;
    private Vacancy vacancy;

    SheetMeasuring(DrawingView view, LevelPage page, Expectation expectation, ChoiceLog log) {
        this.log = log;
        this.view = view;
        this.page = page;
        this.expectation = expectation;
        this.pattern = new Pattern(view);
    }

    MeasuredSheet measured(ExpectedDrawing expected) {
        roof = roofLines();
        expectation = expectation.atScale(roof.scaleFactor(view, expectation));
        wall = new WallReader(view, expectation, roof, log).read();
        roof = roof.withRafterClearOfBargeBoard(view, wall.outer());
        eaves = new EavesReader(view, expectation, roof, wall, log).read();
        if (expectation.asksPart("high-wall")) {
            highWall = Optional.of(new HighWallReader(view, expectation, roof, wall).read());
        }
        vacancy = new Vacancy(view, expectation, roof, wall, eaves);
        word("drawing.eaves", view.mirrored() ? "right" : "left");
        pitch();
        wallAndPlate();
        rafter();
        covering();
        supports();
        tieBeamAndCeiling();
        posts();
        fasciaAndGutter();
        bargeBoard();
        doubtsAtTheEaves();
        beamFilling();
        highWall.ifPresent(this::highWall);
        nameParts();
        implausible();
        incoherent();
        beyondThePicture();
        List<Measurement> measurements = new ArrayList<>();
        for (Expected value : expected.values()) {
            measurements.add(found.getOrDefault(
                    value.key(), Measurement.uncertain(value.key(), "the lines that it is measured from were not found")));
        }
        measurements.addAll(new LineQuality(view, edges, page).measured(expected));
        Optional<Point> heel = heel().map(point -> view.onPage(new Segment(point, point)).start());
        return new MeasuredSheet(measurements, parts, heel);
    }

    /** The long lines; where the slopes alone speak for another scale, the level ones are told apart at that scale. */
    private RoofLines roofLines() {
        RoofLines asAsked = RoofLines.of(view, expectation);
        double factor = asAsked.scaleOfSlopes(view, expectation);
        if (factor == 1) {
            return asAsked;
        }
        RoofLines atScale = RoofLines.of(view, expectation.atScale(factor));
        return atScale.scaleFactor(view, expectation) == 1 ? asAsked : atScale;
    }

    // --- putting down what was found ---

    private void length(String key, double value, double sigma, Edge... evidence) {
        double scale = page.calibration().lengthDeviation(value, uprightest(evidence));
        double uncertainty = Math.sqrt(sigma * sigma + scale * scale + 0.012 * 0.012);
        found.put(key, new Measurement(key, new Finding.Quantity(value, uncertainty), segments(evidence)));
    }

    /** The inclination of the most level of the lines, across which a length is most upright. */
    private static double uprightest(Edge... evidence) {
        return Stream.of(evidence)
                .mapToDouble(edge -> Math.abs(edge.line().inclinationDegrees()))
                .min()
                .orElse(0);
    }

    private void between(String key, double value, Edge first, Edge second) {
        length(key, value, Math.hypot(placeSigma(first), placeSigma(second)), first, second);
    }

    /** Short edges stand between others, whose ink runs into theirs at both ends. */
    static double placeSigma(Edge edge) {
        if (edge.length() < TINY_MM) {
            return Math.hypot(edge.offsetSigmaMm(), 0.1);
        }
        return edge.length() < SHORT_MM ? Math.hypot(edge.offsetSigmaMm(), 0.025) : Math.hypot(edge.offsetSigmaMm(), 0.008);
    }

    private void absent(String... keys) {
        for (String key : keys) {
            found.put(key, Measurement.of(key, new Finding.Absent()));
        }
    }

    private void uncertain(String reason, String... keys) {
        for (String key : keys) {
            found.put(key, Measurement.uncertain(key, reason));
        }
    }

    /** On a sheet that is cut off, what was not seen may lie in the part that is missing. */
    private void beyondThePicture() {
        if (page.cutOff()) {
            List<String> open = found.values().stream()
                    .filter(each -> each.finding() instanceof Finding.Absent || each.finding() instanceof Finding.Count)
                    .map(Measurement::key)
                    .toList();
            uncertain("a part of the sheet is not in the picture", open.toArray(String[]::new));
        }
    }

    /** Makes measured values uncertain; what is absent stays absent. */
    private void unsettle(String reason, String... keys) {
        for (String key : keys) {
            if (found.get(key) != null && found.get(key).finding().isMeasured()) {
                uncertain(reason, key);
            }
        }
    }

    private void yesNo(String key, boolean yes, Edge... evidence) {
        found.put(key, new Measurement(key, new Finding.YesNo(yes), segments(evidence)));
    }

    private void word(String key, String word) {
        found.put(key, new Measurement(key, new Finding.Word(word), List.of()));
    }

    private void count(String key, int number) {
        found.put(key, new Measurement(key, new Finding.Count(number), List.of()));
    }

    private List<Segment> segments(Edge... edges) {
        return Arrays.stream(edges).map(edge -> view.onPage(edge.segment())).toList();
    }

    /** A size several times its expected one that fits no slip is a wrong reading rather than a wrong drawing. */
    private void implausible() {
        for (Map.Entry<String, Measurement> entry : found.entrySet()) {
            if (entry.getValue().finding() instanceof Finding.Quantity quantity
                    && expectation.isImplausible(entry.getKey(), quantity.value())) {
                leaveOpen(
                        entry.getKey(),
                        "the size found is far from the one asked for, so other lines may have been taken for the part");
            }
        }
    }

    /** Leaves open what neighbouring sizes contradict, and everything where the drawing was not understood. */
    private void incoherent() {
        Coherence coherence = new Coherence(expectation, found);
        coherence.doubts().forEach(this::leaveOpen);
        if (isUncertain("wall.thickness")) {
            leaveOpenIfSized("the wall that it is measured from is in doubt", "rafter.overhang", "post.position");
        }
        if (isUncertain("tie-beam.depth") && found.get("brander.count") != null
                && found.get("brander.count").finding().equals(new Finding.Count(0))) {
            leaveOpenIfSized("the tie beam below which the branders hang is in doubt",
                    "brander.count", "brander.width", "brander.depth", "brander.spacing", "brander.crossed");
        }
        if (coherence.isNotUnderstood()) {
            List.copyOf(found.keySet()).forEach(key -> leaveOpen(
                    key, "too few of the sizes agree with the task, so the drawing was not understood well enough"));
        }
    }

    /** Makes what is measured or absent uncertain, with the value that it would have had. */
    private void leaveOpen(String key, String reason) {
        Finding finding = found.get(key).finding();
        if (finding instanceof Finding.Quantity quantity) {
            found.put(key, Measurement.of(key, new Finding.Uncertain(reason, List.of(quantity.value()))));
        } else if (!(finding instanceof Finding.Uncertain)) {
            uncertain(reason, key);
        }
    }

    private void leaveOpenIfSized(String reason, String... keys) {
        for (String key : keys) {
            if (found.containsKey(key)) {
                leaveOpen(key, reason);
            }
        }
    }

    private static String holdsInk(String what) {
        return "there is ink where " + what + " should be, but no clear one";
    }

    // --- the keys ---

    /**
     * The direction of the drawing's own level and upright lines against the page's, in degrees: the mean over the lines,
     * each weighed by how well its length lets its direction be known and how truly a T-square or set square is laid.
     */
    private DrawnLevel level() {
        double pageSigma = Math.max(PAGE_LEVEL_SIGMA_DEGREES, page.calibration().levelUncertaintyDegrees());
        double weights = 1 / (pageSigma * pageSigma);
        double sum = 0;
        for (Optional<Edge> edge : List.of(
                roof.tieBeamTop(), roof.tieBeamBottom(), roof.ceilingTop(), roof.ceilingBottom(), roof.breakLine(),
                wall.outer(), wall.inner(), eaves.cut(), eaves.fasciaOuter(), eaves.bargeEnd(), eaves.gutterBottom(),
                highWall.flatMap(HighWallReader.HighWall::inner), highWall.flatMap(HighWallReader.HighWall::outer))) {
            if (edge.isEmpty() || edge.get().length() < 6) {
                continue;
            }
            double off = offAxis(edge.get());
            double byLength = Math.toDegrees(0.06 * Math.sqrt(12 * 1.5) / Math.pow(edge.get().length(), 1.5));
            double weight = 1 / (SQUARE_SIGMA_DEGREES * SQUARE_SIGMA_DEGREES + byLength * byLength);
            if (Math.abs(off) < 0.6) {
                weights += weight;
                sum += weight * off;
            }
        }
        return new DrawnLevel(sum / weights, 1 / Math.sqrt(weights));
    }

    /** How the drawing's level lies on the page, with one standard deviation, in degrees. */
    private record DrawnLevel(double degrees, double deviation) {}

    private static double offAxis(Edge edge) {
        double inclination = edge.line().inclinationDegrees();
        return Math.abs(inclination) > 45 ? Angles.inclination(inclination - 90) : inclination;
    }

    private void pitch() {
        List<Edge> edges = new ArrayList<>();
        roof.rafterBottom().ifPresent(edges::add);
        roof.rafterTop().ifPresent(edges::add);
        if (edges.isEmpty()) {
            return;
        }
        double slope = edges.stream().mapToDouble(edge -> edge.line().inclinationDegrees()).average().orElseThrow();
        double stretch = page.calibration().stretchUncertaintyPercent() / 100;
        DrawnLevel level = level();
        double pitch = slope - level.degrees;
        double byStretch = Math.toDegrees(stretch * Math.sin(Math.toRadians(pitch)) * Math.cos(Math.toRadians(pitch)));
        double sigma = Math.hypot(Math.hypot(0.03, level.deviation), byStretch);
        found.put("roof.pitch", new Measurement(
                "roof.pitch", new Finding.Quantity(pitch, sigma), segments(edges.toArray(Edge[]::new))));
    }

    private void wallAndPlate() {
        if (wall.outer().isPresent() && wall.inner().isPresent()) {
            Edge outer = wall.outer().get();
            Edge inner = wall.inner().get();
            between("wall.thickness", Level.rightOf(outer, inner), outer, inner);
            if (wall.areFacesOpen()) {
                leaveOpenIfSized("other uprights could be the wall's faces", "wall.thickness");
            }
        }
        if (wall.plateOuter().isEmpty() || wall.plateTop().isEmpty() || wall.top().isEmpty()) {
            return;
        }
        Edge left = wall.plateOuter().get();
        Edge right = wall.plateInner().orElseThrow();
        Edge top = wall.plateTop().get();
        Edge bottom = wall.top().get();
        between("wall-plate.width", Level.rightOf(left, right), left, right);
        between("wall-plate.depth", Level.above(bottom, top), bottom, top);
        crossed("wall-plate.crossed", crossed(left, right, bottom, top));
        if (wall.isPlateOpen()) {
            leaveOpenIfSized("other lines could be the wall plate's", "wall-plate.width", "wall-plate.depth", "wall-plate.crossed");
        }
    }

    private Optional<Point> heel() {
        if (wall.plateOuter().isEmpty() || wall.plateTop().isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(Level.crossing(wall.plateOuter().get(), wall.plateTop().get()));
    }

    private void rafter() {
        if (roof.rafterBottom().isPresent() && roof.rafterTop().isPresent()) {
            Edge bottom = roof.rafterBottom().get();
            Edge top = roof.rafterTop().get();
            between("rafter.depth", bottom.distanceTo(top, view.slope()), bottom, top);
        }
        Optional<Point> heel = heel();
        if (heel.isPresent() && roof.rafterBottom().isPresent()) {
            Edge bottom = roof.rafterBottom().get();
            Edge plateTop = wall.plateTop().orElseThrow();
            double sigma = Math.hypot(bottom.offsetSigmaMm(), plateTop.offsetSigmaMm());
            length("rafter.heel-offset", -bottom.line().distanceTo(heel.get()), sigma, bottom, plateTop);
        }
        if (eaves.cut().isPresent() && wall.outer().isPresent()) {
            Edge cut = eaves.cut().get();
            Edge outer = wall.outer().get();
            between("rafter.overhang", Level.rightOf(cut, outer), cut, outer);
        }
    }

    private void covering() {
        if (roof.coveringBottom().isEmpty() || roof.coveringTop().isEmpty()) {
            return;
        }
        Edge bottom = roof.coveringBottom().get();
        Edge top = roof.coveringTop().get();
        between("covering.thickness", bottom.distanceTo(top, view.slope()), bottom, top);
        if (roof.rafterTop().isEmpty()) {
            return;
        }
        Edge rafterTop = roof.rafterTop().get();
        between("covering.gap", rafterTop.distanceTo(bottom, view.slope()), rafterTop, bottom);
        if (eaves.cut().isPresent() && eaves.coveringEnd().isPresent()) {
            Edge cut = eaves.cut().get();
            Edge end = eaves.coveringEnd().get().edge();
            Point toe = Level.crossing(rafterTop, cut);
            double projection = toe.minus(end.middle()).dot(rafterTop.line().direction());
            between("covering.projection", projection, cut, end);
            if (eaves.coveringEnd().get().probability() < Choice.SURE) {
                leaveOpen("covering.projection", "several lines could end the covering");
            }
        }
    }

    private void supports() {
        if (roof.rafterTop().isEmpty() || roof.coveringBottom().isEmpty()) {
            return;
        }
        Edge lower = roof.rafterTop().get();
        Edge upper = roof.coveringBottom().get();
        double from = lower.from() - 2;
        BoxRow row = BoxRow.read(view, expectation, "support", lower, upper, from, shortOfBreak(lower), view.squareToSlope(),
                Stream.of(eaves.cut(), eaves.fasciaOuter()).flatMap(Optional::stream).map(Edge::line).toList(), log);
        boxes("support", row, lower, upper, from, shortOfBreak(lower));
        if (!row.boxes().isEmpty()) {
            BoxRow.Box first = row.boxes().get(0);
            double depth = lower.distanceTo(upper.within(
                    upper.line().positionOf(first.low().middle()), upper.line().positionOf(first.high().middle())),
                    view.slope());
            between("support.depth", depth, lower, upper);
        } else if (!isUncertain("support.count")) {
            absent("support.depth");
        }
    }

    private boolean isUncertain(String key) {
        return found.get(key) != null && found.get(key).finding() instanceof Finding.Uncertain;
    }

    private void boxes(String part, BoxRow row, Edge lower, Edge upper, double from, double to) {
        List<BoxRow.Box> boxes = row.boxes();
        if (boxes.isEmpty() && !vacancy.ofRow(lower, upper, from, to)) {
            uncertain(holdsInk("the row"), part + ".count", part + ".width", part + ".depth", part + ".spacing", part + ".crossed");
            return;
        }
        if (row.probability() < Choice.SURE) {
            List<Double> counts = Stream.concat(Stream.of(boxes.size()), row.otherCount().stream())
                    .distinct()
                    .map(Integer::doubleValue)
                    .toList();
            found.put(part + ".count", Measurement.of(part + ".count", new Finding.Uncertain(OTHER_ROW, counts)));
        } else {
            count(part + ".count", boxes.size());
        }
        if (boxes.isEmpty()) {
            absent(part + ".width", part + ".spacing", part + ".crossed");
            return;
        }
        BoxRow.Box first = boxes.get(0);
        between(part + ".width", first.width(), first.low(), first.high());
        if (boxes.size() < 2) {
            absent(part + ".spacing");
        } else {
            BoxRow.Box last = boxes.get(boxes.size() - 1);
            double spacing = (last.centre() - first.centre()) / (boxes.size() - 1);
            double sigma = Math.hypot(first.low().offsetSigmaMm(), last.low().offsetSigmaMm()) / (boxes.size() - 1);
            length(part + ".spacing", spacing, sigma, boxes.stream()
                    .flatMap(box -> Stream.of(box.low(), box.high()))
                    .toArray(Edge[]::new));
        }
        double[] crossed = boxes.stream()
                .map(box -> crossed(box.low(), box.high(), lower, upper))
                .flatMapToDouble(OptionalDouble::stream)
                .sorted()
                .toArray();
        if (row.probability() < Choice.SURE) {
            leaveOpenIfSized(OTHER_ROW, part + ".width", part + ".spacing");
        }
        if (row.isGapInked()) {
            leaveOpenIfSized(IN_A_GAP, part + ".count", part + ".spacing");
        }
        crossed(part + ".crossed",
                crossed.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(crossed[crossed.length / 2]));
    }

    private void crossed(String key, OptionalDouble sureness) {
        if (sureness.isEmpty()) {
            uncertain("the outline is too small to see whether diagonals cross in it", key);
        } else if (sureness.getAsDouble() > NOT_CROSSED && sureness.getAsDouble() < CROSSED) {
            uncertain("diagonals seem to cross the outline, but too little of them is there to be sure", key);
        } else {
            yesNo(key, sureness.getAsDouble() >= CROSSED);
        }
    }

    private OptionalDouble crossed(Edge left, Edge right, Edge lower, Edge upper) {
        return pattern.crossed(
                Level.crossing(left, lower), Level.crossing(right, lower), Level.crossing(left, upper),
                Level.crossing(right, upper));
    }

    private void tieBeamAndCeiling() {
        Optional<Edge> beamTop = roof.tieBeamTop();
        Optional<Edge> beamBottom = roof.tieBeamBottom();
        Optional<Edge> ceiling = roof.ceilingTop();
        if (beamTop.isPresent() && beamBottom.isPresent()) {
            between("tie-beam.depth", Level.above(beamBottom.get(), beamTop.get()), beamBottom.get(), beamTop.get());
            if (!vacancy.aboveBeam(beamTop.get())) {
                unsettle("another long level line lies above the one taken for the tie beam's top", "tie-beam.depth");
            }
        } else if (beamTop.isEmpty() && beamBottom.isEmpty() && roof.hasWholeSlope()) {
            absent("tie-beam.depth");
        }
        if (ceiling.isEmpty()) {
            boolean isVacant = beamBottom.map(vacancy::belowBeam).orElse(false)
                    && beamTop.map(vacancy::aboveBeam).orElse(true);
            if (isVacant) {
                absent("ceiling.drop", "brander.width", "brander.depth", "brander.spacing", "brander.crossed");
                count("brander.count", 0);
            }
            return;
        }
        Edge lower = ceiling.get();
        if (beamBottom.isEmpty()) {
            branders(lower, lower.offsetBy(expectation.exactOr("ceiling.drop", 2.5)));
            return;
        }
        Edge upper = beamBottom.get();
        between("ceiling.drop", Level.above(lower, upper), lower, upper);
        int number = branders(lower, upper);
        if (number > 0) {
            between("brander.depth", Level.above(lower, upper), lower, upper);
        } else if (!isUncertain("brander.count")) {
            absent("brander.depth");
        }
    }

    /** The place along a line up to which boxes are looked for: just short of the break line. */
    private double shortOfBreak(Edge line) {
        return roof.breakLine()
                        .map(edge -> line.line().positionOf(Level.crossing(edge, line)))
                        .orElse(line.to())
                - 0.3;
    }

    private int branders(Edge lower, Edge upper) {
        double start = wall.inner().map(edge -> lower.line().positionOf(Level.crossing(edge, lower))).orElse(lower.from()) + 0.6;
        BoxRow row = BoxRow.read(view, expectation, "brander", lower, upper, start, shortOfBreak(lower), Level.UP, List.of(), log);
        boxes("brander", row, lower, upper, start, shortOfBreak(lower));
        return row.boxes().size();
    }

    private void posts() {
        if (!expectation.asksPart("post")) {
            return;
        }
        Optional<PostReader.Post> post = PostReader.read(view, expectation, roof);
        if (post.isEmpty()) {
            if (vacancy.ofPosts()) {
                absent("post.width", "post.position");
            } else {
                uncertain(holdsInk("the first post"), "post.width", "post.position");
            }
            return;
        }
        Edge outer = post.get().outer();
        Edge inner = post.get().inner();
        between("post.width", Level.rightOf(outer, inner), outer, inner);
        if (wall.outer().isPresent() && wall.inner().isPresent()) {
            Edge wallOuter = wall.outer().get();
            double toCentre = (Level.rightOf(wallOuter, outer) + Level.rightOf(wallOuter, inner)) / 2;
            double from = expectation.postsFromOuterFace() ? 0 : Level.rightOf(wallOuter, wall.inner().get()) / 2;
            length("post.position", toCentre - from, Math.hypot(outer.offsetSigmaMm(), wallOuter.offsetSigmaMm()),
                    outer, inner, wallOuter);
        }
        if (!post.get().certain()) {
            unsettle("an upright nearer to the wall could be a side of the first post", "post.width", "post.position");
        }
        parts.put("post.outer", segments(outer));
        parts.put("post.inner", segments(inner));
    }

    private void fasciaAndGutter() {
        if (eaves.cut().isEmpty()) {
            return;
        }
        Edge cut = eaves.cut().get();
        Edge face = eaves.fasciaOuter().orElse(cut);
        if (eaves.fasciaOuter().isPresent() && Level.rightOf(face, cut) < ONE_LINE_MM) {
            uncertain("one line was taken for both the fascia's face and the plumb cut", "fascia.thickness", "fascia.depth");
        } else if (eaves.fasciaOuter().isPresent()) {
            between("fascia.thickness", Level.rightOf(face, cut), face, cut);
            eaves.fasciaClosing().ifPresent(closing -> fasciaDepth(closing, Level.above(closing.bottom(), closing.top())));
        } else if (vacancy.ofFascia(cut)) {
            absent("fascia.thickness", "fascia.depth");
        } else {
            String reason = "another upright stands beside the plumb cut, and one of both may be the fascia's face";
            uncertain(reason, "fascia.thickness", "fascia.depth");
            unsettle(reason, "rafter.overhang", "covering.projection");
        }
        if (eaves.gutterOuter().isEmpty()) {
            absent("gutter.width", "gutter.depth", "barge-board.clearance");
            return;
        }
        Edge outer = eaves.gutterOuter().get();
        Edge from = eaves.fasciaOuter().isPresent() ? eaves.gutter().orElseThrow().inner() : face;
        between("gutter.width", Level.rightOf(outer, from), outer, from);
        Edge bottom = eaves.gutterBottom().orElseThrow();
        GutterReader.Rim rim = eaves.gutter().orElseThrow().rim();
        double bottomY = bottom.yAt(outer.middle().x());
        double depth = rim.y() - bottomY;
        if (rim.doubt().isPresent()) {
            List<Double> depths = Stream.concat(Stream.of(depth), rim.rivalY().map(y -> y - bottomY).stream()).toList();
            found.put("gutter.depth", Measurement.of("gutter.depth", new Finding.Uncertain(rim.doubt().get(), depths)));
        } else {
            length("gutter.depth", depth, Math.hypot(rim.sigma(), bottom.offsetSigmaMm()), outer, bottom);
        }
    }

    private void fasciaDepth(FasciaReader.Closing closing, double depth) {
        if (closing.probability() >= Choice.SURE) {
            between("fascia.depth", depth, closing.bottom(), closing.top());
        } else {
            between("two level lines could close the fascia", "fascia.depth", depth, closing.otherDepth().orElse(depth));
        }
    }

    private void between(String reason, String key, double first, double second) {
        found.put(key, Measurement.of(key, new Finding.Uncertain(reason, List.of(first, second))));
    }

    /** What two readings of the eaves leave open is said to be open. */
    private void doubtsAtTheEaves() {
        EavesReader.Doubts doubts = eaves.doubts();
        if (doubts.isCutOpen()) {
            unsettle("two uprights could be the rafter's plumb cut", "rafter.overhang", "covering.projection");
        }
        if (doubts.isFaceOpen()) {
            unsettle("two uprights could be the fascia's face", "fascia.thickness", "fascia.depth", "gutter.width");
        }
        doubts.gutter().ifPresent(reason -> uncertain(reason, "gutter.width", "gutter.depth", "barge-board.clearance"));
    }

    private void bargeBoard() {
        if (eaves.cut().isEmpty()) {
            return;
        }
        if (eaves.bargeEnd().isEmpty()) {
            if (vacancy.ofBargeBoard(eaves.fasciaOuter().orElse(eaves.cut().get()).middle().x())) {
                absent("barge-board.depth", "barge-board.clearance");
            } else {
                uncertain(holdsInk("the barge board"), "barge-board.depth", "barge-board.clearance");
            }
            return;
        }
        Edge end = eaves.bargeEnd().get();
        if (eaves.gutterOuter().isPresent()) {
            Edge gutter = eaves.gutterOuter().get();
            between("barge-board.clearance", Level.rightOf(end, gutter), end, gutter);
        }
        if (eaves.bargeBottom().isPresent() && roof.coveringTop().isPresent()) {
            Edge bottom = eaves.bargeBottom().get();
            Edge top = roof.coveringTop().get();
            double middle = wall.outer().map(edge -> (end.middle().x() + edge.middle().x()) / 2).orElse(end.middle().x() + 10);
            between("barge-board.depth", top.yAt(middle) - bottom.yAt(middle), bottom, top);
        }
    }

    private void beamFilling() {
        if (!expectation.asks("beam-filling.hatched") || wall.outer().isEmpty() || roof.rafterTop().isEmpty()
                || roof.coveringBottom().isEmpty()) {
            return;
        }
        Edge outer = wall.outer().get();
        Edge low = roof.rafterTop().get();
        Edge high = roof.coveringBottom().get();
        double setIn = heel().map(point -> point.x() - outer.xAt(point.y())).orElse(expectation.setIn());
        double leftX = outer.xAt(low.middle().y()) + 0.4;
        double rightX = outer.xAt(low.middle().y()) + Math.max(setIn, 1.5) - 0.4;
        Pattern.Region region = new Pattern.Region() {
            @Override
            public double lowY() {
                return low.yAt(leftX);
            }

            @Override
            public double highY() {
                return high.yAt(rightX);
            }

            @Override
            public double leftX(double y) {
                return leftX;
            }

            @Override
            public double rightX(double y) {
                return rightX;
            }

            @Override
            public boolean contains(double x, double y) {
                return y > low.yAt(x) + 0.45 && y < high.yAt(x) - 0.45;
            }
        };
        double ink = pattern.meanInk(region);
        yesNo("beam-filling.hatched", ink > 0.08);
    }

    private void highWall(HighWallReader.HighWall high) {
        name("high-wall.inner", high.inner());
        name("high-wall.outer", high.outer());
        name("high-wall.top", high.top());
        if (high.inner().isEmpty() || high.outer().isEmpty()) {
            return;
        }
        Edge inner = high.inner().get();
        between("high-wall.thickness", Level.rightOf(inner, high.outer().get()), inner, high.outer().get());
        wall.inner().ifPresent(low -> between("high-wall.clear-span", Level.rightOf(low, inner), low, inner));
        if (high.isPlateAbsent()) {
            absent("high-plate.width", "high-plate.depth", "high-plate.rise", "high-plate.crossed");
        }
        high.plate().ifPresent(plate -> highPlate(plate, high.top().orElseThrow()));
        if (high.areFacesOpen()) {
            unsettle("other uprights could be the faces of the high wall", "high-wall.thickness", "high-wall.clear-span");
        }
        if (high.isPlateOpen()) {
            unsettle("other lines could be the high plate's", "high-plate.width", "high-plate.depth", "high-plate.crossed");
        }
        if (wall.areFacesOpen() || wall.isPlateOpen()) {
            unsettle("other lines could be the low wall's", "high-wall.clear-span", "high-plate.rise");
        }
    }

    private void highPlate(HighWallReader.Plate plate, Edge bottom) {
        between("high-plate.width", Level.rightOf(plate.inner(), plate.outer()), plate.inner(), plate.outer());
        between("high-plate.depth", Level.above(bottom, plate.top()), bottom, plate.top());
        crossed("high-plate.crossed", crossed(plate.inner(), plate.outer(), bottom, plate.top()));
        wall.plateTop().ifPresent(low -> {
            DrawnLevel level = level();
            Vector apart = plate.top().middle().minus(low.middle()).rotatedDegrees(-level.degrees);
            double byLevel = Math.abs(apart.x()) * Math.tan(Math.toRadians(Math.max(level.deviation, LEVEL_SIGMA_DEGREES)));
            double sigma = Math.hypot(byLevel, Math.hypot(low.offsetSigmaMm(), plate.top().offsetSigmaMm()));
            length("high-plate.rise", apart.y(), sigma, low, plate.top());
        });
        name("high-plate.inner", Optional.of(plate.inner()));
        name("high-plate.outer", Optional.of(plate.outer()));
        name("high-plate.top", Optional.of(plate.top()));
    }

    private void nameParts() {
        name(expectation.draws("break") ? "break" : "high-end.cut", roof.breakLine());
        name("rafter.bottom", roof.rafterBottom());
        name("rafter.top", roof.rafterTop());
        name("covering.bottom", roof.coveringBottom());
        name("covering.top", roof.coveringTop());
        name("covering.end", eaves.coveringEnd().map(CoveringEnd::edge));
        name("tie-beam.top", roof.tieBeamTop());
        name("tie-beam.bottom", roof.tieBeamBottom());
        name("ceiling.top", roof.ceilingTop());
        name("ceiling.bottom", roof.ceilingBottom());
        name("wall.outer", wall.outer());
        name("wall.inner", wall.inner());
        name("wall.top", wall.top());
        name("wall-plate.top", wall.plateTop());
        name("wall-plate.outer", wall.plateOuter());
        name("wall-plate.inner", wall.plateInner());
        name("rafter.cut", eaves.cut());
        name("fascia.outer", eaves.fasciaOuter());
        name("fascia.top", eaves.fasciaClosing().map(FasciaReader.Closing::top));
        name("fascia.bottom", eaves.fasciaClosing().map(FasciaReader.Closing::bottom));
        name("gutter.outer", eaves.gutterOuter());
        name("gutter.bottom", eaves.gutterBottom());
        name("barge-board.end", eaves.bargeEnd());
        name("barge-board.bottom", eaves.bargeBottom());
    }

    private void name(String part, Optional<Edge> edge) {
        edge.ifPresent(seen -> {
            parts.put(part, segments(seen));
            edges.put(part, seen);
        });
    }
}
