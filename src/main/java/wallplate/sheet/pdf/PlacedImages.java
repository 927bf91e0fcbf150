package wallplate.sheet.pdf;

import java.awt.geom.Point2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;
import org.apache.pdfbox.util.Matrix;
import org.apache.pdfbox.util.Vector;

/** Walks through a page's content and notes its images, where they are put, and whether anything else is drawn. */
final class PlacedImages extends PDFGraphicsStreamEngine {

    /** A scanned page has a handful of operations; a page with more than this is not walked to its end. */
    private static final int MOST_OPERATIONS = 200_000;

    private static final int DEEPEST_FORM = 6;

    private final List<Placed> images = new ArrayList<>();
    private boolean othersDrawn;
    private final PageLimits limits;
    private int operations;
    private int depth;

    private PlacedImages(PDPage page, PageLimits limits) {
        super(page);
        this.limits = limits;
    }

    /** An image and the matrix that carries the unit square to where it stands on the page. */
    record Placed(PDImage image, Matrix matrix) {}

    /** What a page shows. */
    record Content(List<Placed> images, boolean othersDrawn) {}

    static Content on(PDPage page, PageLimits limits) throws IOException {
        Iterator<PDStream> contents = page.getContentStreams();
        while (contents.hasNext()) {
            limits.checkContent(contents.next().getCOSObject());
        }
        PlacedImages walk = new PlacedImages(page, limits);
        walk.processPage(page);
        return new Content(List.copyOf(walk.images), walk.othersDrawn);
    }

    @Override
    protected void processOperator(Operator operator, List<COSBase> operands) throws IOException {
        operations++;
        if (operations > MOST_OPERATIONS) {
            throw new PageLimits.Exceeded("the page has more than " + MOST_OPERATIONS + " drawing operations");
        }
        limits.checkTime();
        super.processOperator(operator, operands);
    }

    /** Errors inside an operation are passed over by the library; a limit is not. */
    @Override
    protected void operatorException(Operator operator, List<COSBase> operands, IOException exception)
            throws IOException {
        if (exception instanceof PageLimits.Exceeded) {
            throw exception;
        }
        super.operatorException(operator, operands, exception);
    }

    /** Forms in forms in forms double with every level; a scan has none or one. */
    @Override
    public void showForm(PDFormXObject form) throws IOException {
        depth++;
        if (depth > DEEPEST_FORM) {
            throw new PageLimits.Exceeded("the page's forms are nested too deeply");
        }
        super.showForm(form);
        depth--;
    }

    @Override
    public void drawImage(PDImage image) throws IOException {
        limits.checkImage(image);
        images.add(new Placed(image, getGraphicsState().getCurrentTransformationMatrix().clone()));
    }

    @Override
    protected void showGlyph(Matrix textRenderingMatrix, PDFont font, int code, Vector displacement) {
        // The invisible text that text recognition lays over a scan does not count.
        if (getGraphicsState().getTextState().getRenderingMode() != RenderingMode.NEITHER) {
            othersDrawn = true;
        }
    }

    @Override
    public void strokePath() {
        othersDrawn = true;
    }

    @Override
    public void fillPath(int windingRule) {
        othersDrawn = true;
    }

    @Override
    public void fillAndStrokePath(int windingRule) {
        othersDrawn = true;
    }

    @Override
    public void shadingFill(COSName shadingName) {
        othersDrawn = true;
    }

    @Override
    public void appendRectangle(Point2D p0, Point2D p1, Point2D p2, Point2D p3) {
        // Paths matter only where they are painted.
    }

    @Override
    public void clip(int windingRule) {
        // A scan's clip is its page.
    }

    @Override
    public void moveTo(float x, float y) {
        // Paths matter only where they are painted.
    }

    @Override
    public void lineTo(float x, float y) {
        // Paths matter only where they are painted.
    }

    @Override
    public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {
        // Paths matter only where they are painted.
    }

    @Override
    public Point2D getCurrentPoint() {
        return new Point2D.Float();
    }

    @Override
    public void closePath() {
        // Paths matter only where they are painted.
    }

    @Override
    public void endPath() {
        // Paths matter only where they are painted.
    }
}
