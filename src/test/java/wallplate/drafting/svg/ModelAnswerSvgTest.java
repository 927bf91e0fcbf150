package wallplate.drafting.svg;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import wallplate.drafting.DrawingOptions;
import wallplate.drafting.ModelAnswer;
import wallplate.geometry.PlaneMap;
import wallplate.geometry.Point;
import wallplate.solver.Caution;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;
import wallplate.task.Tasks;

class ModelAnswerSvgTest {

    private static final ExpectedDrawing BOATHOUSE = Solver.solve(Tasks.boathouse());

    @Test
    void oneUnitIsOneMillimetreOfTheSheet() {
        Element root = ParsedSvg.of(ModelAnswer.of(BOATHOUSE).svgFile()).root();
        assertThat(root.getAttribute("viewBox")).isEqualTo("0 0 297 210");
        assertThat(root.getAttribute("width")).isEqualTo("297mm");
        assertThat(root.getAttribute("height")).isEqualTo("210mm");
    }

    @Test
    void everyPartCanBeAddressed() {
        ParsedSvg svg = ParsedSvg.of(ModelAnswer.of(BOATHOUSE).svg());
        Set<String> expected = BOATHOUSE.lines().stream()
                .map(line -> line.part() + " " + line.index())
                .collect(Collectors.toCollection(TreeSet::new));
        Set<String> found = svg.groups("part").stream()
                .map(group -> group.getAttribute("data-part") + " " + group.getAttribute("data-index"))
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(found).containsExactlyElementsOf(expected);
        assertThat(svg.groups("cut-outline")).isNotEmpty();
        assertThat(svg.groups("hatch")).isNotEmpty();
        assertThat(svg.all("path")).anyMatch(path -> path.getAttribute("data-edge").equals("low"));
    }

    @Test
    void aScreenReaderHearsWhatItIs() {
        ParsedSvg svg = ParsedSvg.of(ModelAnswer.of(BOATHOUSE).svg());
        Element title = svg.all("title").get(0);
        Element description = svg.all("desc").get(0);
        assertThat(svg.root().getAttribute("role")).isEqualTo("img");
        assertThat(svg.root().getAttribute("aria-labelledby"))
                .isEqualTo(title.getAttribute("id") + " " + description.getAttribute("id"));
        assertThat(title.getTextContent()).isEqualTo("Section through the eaves of the boathouse");
        assertThat(description.getTextContent()).contains("scale 1:20", "eaves on the right", Caution.TEXT);
    }

    @Test
    void onAPageColourAndSizeAreThePages() {
        String svg = ModelAnswer.of(BOATHOUSE).svg();
        assertThat(svg).doesNotContain("<style", "style=", "#26292C", "width=\"297mm\"").contains("currentColor");
    }

    @Test
    void signsOfXmlInATitleStayText() {
        String title = "Eaves of \"Nod & Son\" <script>alert(1)</script>";
        var task = Tasks.boathouse("Section through the eaves of the boathouse", "'" + title + "'");
        ParsedSvg svg = ParsedSvg.of(ModelAnswer.of(Solver.solve(task)).svg());
        assertThat(svg.all("script")).isEmpty();
        assertThat(svg.all("title").get(0).getTextContent()).isEqualTo(title);
    }

    @Test
    void overlayStandsInTheDetailsOwnAxes() {
        String group = ModelAnswer.of(BOATHOUSE).overlayGroup();
        ParsedSvg svg = ParsedSvg.of(group);
        // Origin at the heel point, y down: the tie beam's underside starts there and runs to the inside.
        Element beam = svg.groups("part").stream()
                .filter(part -> part.getAttribute("data-part").equals("tie-beam"))
                .findFirst()
                .orElseThrow();
        List<String> paths = paths(beam);
        assertThat(paths).anyMatch(path -> path.startsWith("M0 0L") && path.endsWith(" 0"));
        assertThat(svg.all("text")).isEmpty();
        assertThat(svg.groups("hatch")).isEmpty();
        assertThat(group).doesNotContain("dimension", "sheet");
    }

    private static List<String> paths(Element group) {
        var nodes = group.getElementsByTagName("path");
        return java.util.stream.IntStream.range(0, nodes.getLength())
                .mapToObj(index -> ((Element) nodes.item(index)).getAttribute("d"))
                .toList();
    }

    @Test
    void overlayFollowsTheMapToAPicture() {
        PlaneMap map = new PlaneMap() {
            @Override
            public Point apply(Point point) {
                return new Point(1000 - 10 * point.x(), 800 - 10 * point.y());
            }

            @Override
            public PlaneMap inverse() {
                throw new UnsupportedOperationException();
            }
        };
        ParsedSvg svg = ParsedSvg.of(ModelAnswer.of(BOATHOUSE).overlay(map, 2000, 1500));
        assertThat(svg.root().getAttribute("viewBox")).isEqualTo("0 0 2000 1500");
        assertThat(svg.all("path")).anyMatch(path -> path.getAttribute("d").startsWith("M1000 800L"));
    }

    @Test
    void sameDrawingGivesTheSameText() {
        assertThat(ModelAnswer.of(BOATHOUSE).svg()).isEqualTo(ModelAnswer.of(BOATHOUSE).svg());
        assertThat(ModelAnswer.of(BOATHOUSE).with(DrawingOptions.FULL.withLabels(false)).svg())
                .isNotEqualTo(ModelAnswer.of(BOATHOUSE).svg());
    }
}
