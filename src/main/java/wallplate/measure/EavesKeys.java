package wallplate.measure;

import java.util.List;
import java.util.stream.Stream;
import wallplate.stroke.Edge;

/** Measures what hangs at the rafter's outer end: fascia, gutter and barge board. */
final class EavesKeys {

    /** Two lines cannot be drawn nearer to one another than this: a pencil's line is about as broad. */
    private static final double ONE_LINE_MM = 0.3;

    private static final double BARGE_MIDDLE_MM = 10;

    private final Arrangement drawing;
    private final EavesReader.Eaves eaves;
    private final Findings findings;

    EavesKeys(Arrangement drawing, Findings findings) {
        this.drawing = drawing;
        this.eaves = drawing.eaves();
        this.findings = findings;
    }

    void fascia() {
        if (eaves.cut().isEmpty()) {
            return;
        }
        Edge cut = eaves.cut().get();
        if (eaves.fasciaOuter().isPresent()) {
            Edge face = eaves.fasciaOuter().get();
            if (Level.rightOf(face, cut) < ONE_LINE_MM) {
                findings.uncertain("one line was taken for both the fascia's face and the plumb cut",
                        "fascia.thickness", "fascia.depth");
                return;
            }
            findings.between("fascia.thickness", Level.rightOf(face, cut), face, cut);
            eaves.fasciaClosing().ifPresent(this::fasciaDepth);
        } else {
            findings.absent("fascia.thickness", "fascia.depth");
        }
    }

    private void fasciaDepth(FasciaReader.Closing closing) {
        double depth = Level.above(closing.bottom(), closing.top());
        if (closing.probability() >= Choice.SURE) {
            findings.between("fascia.depth", depth, closing.bottom(), closing.top());
        } else {
            findings.readings("fascia.depth", "two level lines could close the fascia",
                    List.of(depth, closing.otherDepth().orElse(depth)));
        }
    }

    void gutter() {
        if (eaves.cut().isEmpty()) {
            return;
        }
        if (eaves.gutterOuter().isEmpty()) {
            findings.absent("gutter.width", "gutter.depth", "barge-board.clearance");
            return;
        }
        Edge outer = eaves.gutterOuter().get();
        Edge from = eaves.fasciaOuter().isPresent() ? eaves.gutter().orElseThrow().inner() : eaves.cut().get();
        findings.between("gutter.width", Level.rightOf(outer, from), outer, from);
        Edge bottom = eaves.gutterBottom().orElseThrow();
        RimReader.Rim rim = eaves.gutter().orElseThrow().rim();
        double bottomY = bottom.yAt(outer.middle().x());
        double depth = rim.y() - bottomY;
        if (rim.doubt().isPresent()) {
            List<Double> depths = Stream.concat(Stream.of(depth), rim.rivalY().map(y -> y - bottomY).stream()).toList();
            findings.readings("gutter.depth", rim.doubt().get(), depths);
        } else {
            findings.length("gutter.depth", depth, Math.hypot(rim.sigma(), bottom.offsetSigmaMm()), outer, bottom);
        }
    }

    void bargeBoard() {
        if (eaves.cut().isEmpty()) {
            return;
        }
        if (eaves.bargeEnd().isEmpty()) {
            if (drawing.vacancy().ofBargeBoard(eaves.fasciaOuter().orElse(eaves.cut().get()).middle().x())) {
                findings.absent("barge-board.depth", "barge-board.clearance");
            } else {
                findings.uncertain(Vacancy.holdsInk("the barge board"), "barge-board.depth", "barge-board.clearance");
            }
            return;
        }
        Edge end = eaves.bargeEnd().get();
        if (eaves.gutterOuter().isPresent()) {
            Edge gutter = eaves.gutterOuter().get();
            findings.between("barge-board.clearance", Level.rightOf(end, gutter), end, gutter);
        }
        if (eaves.bargeBottom().isPresent() && drawing.roof().coveringTop().isPresent()) {
            Edge bottom = eaves.bargeBottom().get();
            Edge top = drawing.roof().coveringTop().get();
            double middle = drawing.wall().outer()
                    .map(edge -> (end.middle().x() + edge.middle().x()) / 2)
                    .orElse(end.middle().x() + BARGE_MIDDLE_MM);
            findings.between("barge-board.depth", top.yAt(middle) - bottom.yAt(middle), bottom, top);
        }
    }

    /** What two readings of the eaves leave open is said to be open. */
    void doubts() {
        EavesReader.Doubts doubts = eaves.doubts();
        if (doubts.isPlaceOpen()) {
            findings.leaveOpen("it cannot be told for sure where the rafter ends",
                    "rafter.overhang", "covering.projection", "fascia.thickness", "fascia.depth", "gutter.width", "gutter.depth", "barge-board.depth",
                    "barge-board.clearance");
        }
        if (doubts.isCutOpen()) {
            findings.unsettle("two uprights could be the rafter's plumb cut", "rafter.overhang", "covering.projection");
        }
        if (doubts.isFaceOpen()) {
            findings.unsettle("two uprights could be the fascia's face", "fascia.thickness", "fascia.depth", "gutter.width");
        }
        doubts.gutter().ifPresent(reason ->
                findings.uncertain(reason, "gutter.width", "gutter.depth", "barge-board.clearance"));
    }
}
