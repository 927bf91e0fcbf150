package wallplate.measure;

import java.util.Map;
import java.util.Optional;
import wallplate.stroke.Edge;

/** Measures what is level or stands on it: the tie beam, the ceiling with its branders, and the posts. */
final class BeamKeys {

    private static final double USUAL_DROP_MM = 2.5;
    private static final double AT_RAFTER_MM = 1.5;
    private static final double CLEAR_OF_WALL_MM = 1.5;
    private static final double IN_LINE_MM = 0.4;

    private final Arrangement drawing;
    private final Findings findings;
    private final RowKeys rows;

    BeamKeys(Arrangement drawing, Findings findings, RowKeys rows) {
        this.drawing = drawing;
        this.findings = findings;
        this.rows = rows;
    }

    void tieBeam() {
        RoofLines roof = drawing.roof();
        if (roof.tieBeamTop().isPresent() && roof.tieBeamBottom().isPresent()) {
            Edge top = roof.tieBeamTop().get();
            Edge bottom = roof.tieBeamBottom().get();
            findings.between("tie-beam.depth", Level.above(bottom, top), bottom, top);
            if (isInPlace(top, bottom)) {
                findings.inPlace("tie-beam.depth");
            }
            if (!drawing.vacancy().aboveBeam(top)) {
                findings.unsettle("another long level line lies above the one taken for the tie beam's top", "tie-beam.depth");
            }
        } else if (roof.tieBeamTop().isEmpty() && roof.tieBeamBottom().isEmpty() && roof.hasWholeSlope()) {
            findings.absent("tie-beam.depth");
        }
    }

    /** Whether the beam's top begins at the rafter, clear of the wall, and its underside runs in line with the plate's top. */
    private boolean isInPlace(Edge top, Edge bottom) {
        double startX = top.segment().start().x();
        boolean isAtRafter = drawing.roof().rafterBottom()
                .map(edge -> Math.abs(startX - edge.xAt(top.middle().y())) < AT_RAFTER_MM)
                .orElse(false);
        boolean isClearOfWall = drawing.wall().inner()
                .map(edge -> startX > edge.xAt(top.middle().y()) + CLEAR_OF_WALL_MM)
                .orElse(false);
        boolean isOnPlate = drawing.wall().plateTop()
                .map(edge -> Math.abs(edge.middle().y() - bottom.yAt(edge.middle().x())) < IN_LINE_MM)
                .orElse(false);
        return isAtRafter && isClearOfWall && isOnPlate;
    }

    void ceiling() {
        Optional<Edge> beamBottom = drawing.roof().tieBeamBottom();
        if (drawing.roof().ceilingTop().isEmpty()) {
            boolean isVacant = beamBottom.map(drawing.vacancy()::belowBeam).orElse(false)
                    && drawing.roof().tieBeamTop().map(drawing.vacancy()::aboveBeam).orElse(true);
            if (isVacant) {
                findings.absent("ceiling.drop", "brander.width", "brander.depth", "brander.spacing", "brander.crossed");
                findings.count("brander.count", 0);
            }
            return;
        }
        Edge lower = drawing.roof().ceilingTop().get();
        if (beamBottom.isEmpty()) {
            rows.branders(lower, lower.offsetBy(drawing.expectation().exactOr("ceiling.drop", USUAL_DROP_MM)));
            return;
        }
        Edge upper = beamBottom.get();
        findings.between("ceiling.drop", Level.above(lower, upper), lower, upper);
        int number = rows.branders(lower, upper);
        if (number > 0) {
            findings.between("brander.depth", Level.above(lower, upper), lower, upper);
        } else if (!findings.isUncertain("brander.count")) {
            findings.absent("brander.depth");
        }
    }

    /** The first post; its sides, by part and edge, where it is there. */
    Map<String, Edge> posts() {
        if (!drawing.expectation().asksPart("post")) {
            return Map.of();
        }
        Optional<PostReader.Post> post = PostReader.read(drawing.view(), drawing.expectation(), drawing.roof());
        if (post.isEmpty()) {
            if (drawing.vacancy().ofPosts()) {
                findings.absent("post.width", "post.position");
            } else {
                findings.uncertain(Vacancy.holdsInk("the first post"), "post.width", "post.position");
            }
            return Map.of();
        }
        Edge outer = post.get().outer();
        Edge inner = post.get().inner();
        findings.between("post.width", Level.rightOf(outer, inner), outer, inner);
        position(outer, inner);
        if (!post.get().certain()) {
            findings.unsettle("an upright nearer to the wall could be a side of the first post", "post.width", "post.position");
        }
        return Map.of("post.outer", outer, "post.inner", inner);
    }

    /** From the wall's outer face or its middle, as the task has it, to the post's centre. */
    private void position(Edge outer, Edge inner) {
        Optional<Edge> wallOuter = drawing.wall().outer();
        Optional<Edge> wallInner = drawing.wall().inner();
        if (wallOuter.isEmpty() || wallInner.isEmpty()) {
            return;
        }
        Edge face = wallOuter.get();
        double toCentre = (Level.rightOf(face, outer) + Level.rightOf(face, inner)) / 2;
        double from = drawing.expectation().postsFromOuterFace() ? 0 : Level.rightOf(face, wallInner.get()) / 2;
        double sigma = Math.hypot(outer.offsetSigmaMm(), face.offsetSigmaMm());
        findings.length("post.position", toCentre - from, sigma, outer, inner, face);
    }
}
