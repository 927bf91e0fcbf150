package wallplate.drafting.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Line2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import wallplate.assessment.AssessedSheet;
import wallplate.assessment.Assessor;
import wallplate.drafting.DrawingOptions;
import wallplate.drafting.DrawingSheets;
import wallplate.drafting.SheetOwner;
import wallplate.drafting.layout.ModelSheet;
import wallplate.geometry.Segment;
import wallplate.marking.Verdict;
import wallplate.sheet.PrintedMarks;
import wallplate.sheet.ScanFile;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.LineRole;
import wallplate.solver.Solver;
import wallplate.task.DrawingTask;
import wallplate.task.EavesSide;
import wallplate.task.Tasks;

/** The circle closed: the model answer pencilled on a printed sheet, scanned and marked. */
class DrawnOnPrintedSheetTest {

    private static final int DPI = 300;

    @Test
    void modelAnswerOnAPrintedSheetGetsFullMarks() {
        DrawingTask task = Tasks.boathouse();
        List<AssessedSheet> assessed = new ArrayList<>();
        ScanFile.forEachPage("drawn.png", drawn(task), page -> assessed.add(new Assessor().assess(page, task)));
        assertThat(assessed).hasSize(1);
        assertThat(assessed.get(0)).isInstanceOfSatisfying(AssessedSheet.Read.class, read -> {
            assertThat(read.marked().marks()).isNotEmpty().allSatisfy(mark -> assertThat(mark.verdict())
                    .as(mark.criterion())
                    .isEqualTo(Verdict.MET));
            assertThat(read.marked().awarded()).isEqualTo(read.marked().available());
        });
    }

    /** A PNG of the printed sheet with its brief, the drawing and the reference bar pencilled on it. */
    private static byte[] drawn(DrawingTask task) {
        byte[] pdf = DrawingSheets.of(task).withBrief(true).pdf(List.of(SheetOwner.anybody(1)));
        BufferedImage page = RenderedPages.grey(pdf, 0, DPI);
        Graphics2D pencil = page.createGraphics();
        pencil.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        pencil.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        pencil.scale(DPI / 25.4, DPI / 25.4);
        pencil.setColor(Color.DARK_GRAY);
        pencil(task, pencil);
        pencil.dispose();
        try (ByteArrayOutputStream png = new ByteArrayOutputStream()) {
            ImageIO.write(page, "png", png);
            return png.toByteArray();
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
    }

    private static void pencil(DrawingTask task, Graphics2D pencil) {
        ExpectedDrawing drawing = Solver.solve(task);
        var heel = new ModelSheet(drawing, DrawingOptions.FULL, FaceWidths.shared()).heel();
        double side = task.eaves() == EavesSide.RIGHT ? -1 : 1;
        double height = task.sheet().heightMm();
        for (var line : drawing.lines()) {
            boolean outline = line.role() == LineRole.CUT_OUTLINE || line.role() == LineRole.SEEN_OUTLINE;
            pencil.setStroke(new BasicStroke(outline ? 0.4f : 0.25f));
            Segment place = line.segment();
            pencil.draw(new Line2D.Double(
                    heel.x() + side * place.start().x(),
                    height - heel.y() - place.start().y(),
                    heel.x() + side * place.end().x(),
                    height - heel.y() - place.end().y()));
        }
        Segment bar = PrintedMarks.of(task.sheet()).barPlace();
        pencil.setStroke(new BasicStroke(0.35f));
        pencil.draw(new Line2D.Double(bar.start().x(), height - bar.start().y(), bar.end().x(), height - bar.end().y()));
        for (var end : List.of(bar.start(), bar.end())) {
            pencil.draw(new Line2D.Double(end.x(), height - end.y() - 3, end.x(), height - end.y() + 3));
        }
    }
}
