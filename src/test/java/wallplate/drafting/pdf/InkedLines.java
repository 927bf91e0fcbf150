package wallplate.drafting.pdf;

import java.awt.geom.Point2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;

/** Every straight line that a page strokes, in points, as PDFBox's own engine interprets the page. */
public final class InkedLines extends PDFGraphicsStreamEngine {

    /** A stroked line with its thickness, all in points. */
    public record InkedLine(double startX, double startY, double endX, double endY, double width) {

        public double length() {
            return Math.hypot(endX - startX, endY - startY);
        }
    }

    private final List<InkedLine> lines = new ArrayList<>();
    private final List<InkedLine> path = new ArrayList<>();
    private Point2D current = new Point2D.Double();

    private InkedLines(PDPage page) {
        super(page);
    }

    public static List<InkedLine> of(byte[] pdf, int page) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            InkedLines engine = new InkedLines(document.getPage(page));
            engine.processPage(document.getPage(page));
            return engine.lines;
        }
    }

    @Override
    public void moveTo(float x, float y) {
        current = new Point2D.Double(x, y);
    }

    @Override
    public void lineTo(float x, float y) {
        float width = super.transformWidth(getGraphicsState().getLineWidth());
        path.add(new InkedLine(current.getX(), current.getY(), x, y, width));
        current = new Point2D.Double(x, y);
    }

    @Override
    public void strokePath() {
        lines.addAll(path);
        path.clear();
    }

    @Override
    public void endPath() {
        path.clear();
    }

    @Override
    public void fillPath(int windingRule) {
        path.clear();
    }

    @Override
    public void fillAndStrokePath(int windingRule) {
        strokePath();
    }

    @Override
    public Point2D getCurrentPoint() {
        return current;
    }

    @Override
    public void appendRectangle(Point2D first, Point2D second, Point2D third, Point2D fourth) {}

    @Override
    public void drawImage(PDImage image) {}

    @Override
    public void clip(int windingRule) {}

    @Override
    public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {
        current = new Point2D.Double(x3, y3);
    }

    @Override
    public void closePath() {}

    @Override
    public void shadingFill(COSName name) {}
}
