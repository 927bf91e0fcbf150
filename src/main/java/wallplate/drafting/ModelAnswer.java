package wallplate.drafting;

import wallplate.drafting.dxf.DxfWriter;
import wallplate.drafting.layout.ModelSheet;
import wallplate.drafting.layout.OverlaySheet;
import wallplate.drafting.paper.Picture;
import wallplate.drafting.pdf.FaceWidths;
import wallplate.drafting.pdf.PdfBook;
import wallplate.drafting.svg.SvgWriter;
import wallplate.geometry.PlaneMap;
import wallplate.solver.ExpectedDrawing;

/**
 * The drawing that a task asks for, put on its sheet: what a teacher pins on the wall.
 *
 * <p>Immutable; every output is made anew when asked for and is the same each time.
 */
public final class ModelAnswer {

    private final ExpectedDrawing drawing;
    private final DrawingOptions options;

    private ModelAnswer(ExpectedDrawing drawing, DrawingOptions options) {
        this.drawing = drawing;
        this.options = options;
    }

    /** With dimensions and labels, real sizes. */
    public static ModelAnswer of(ExpectedDrawing drawing) {
        return new ModelAnswer(drawing, DrawingOptions.FULL);
    }

    public ModelAnswer with(DrawingOptions chosen) {
        return new ModelAnswer(drawing, chosen);
    }

    public DrawingOptions options() {
        return options;
    }

    /**
     * The sheet as an {@code svg} element for a page: one millimetre is one unit of the view box, the colour is the
     * page's own, parts are {@code g.part[data-part][data-index]}, kinds of line are class names.
     */
    public String svg() {
        return new SvgWriter(FaceWidths.shared()).inline(sheet());
    }

    /** The sheet as an SVG file of its own, at true size. */
    public String svgFile() {
        return new SvgWriter(FaceWidths.shared()).standalone(sheet());
    }

    /** The sheet as a PDF that prints at true scale. */
    public byte[] pdf() {
        try (PdfBook book = new PdfBook(drawing.task().title())) {
            book.add(sheet());
            return book.bytes();
        }
    }

    /**
     * The sheet as an ASCII DXF file of release 2000, for drawing with a computer: real size, one unit a millimetre, the
     * heel point at 0, 0, layers by part and kind of line.
     */
    public byte[] dxf() {
        ModelSheet sheet = new ModelSheet(drawing, options, FaceWidths.shared());
        double enlargement = drawing.task().scale().denominator();
        return new DxfWriter(sheet.picture(), enlargement, sheet.heel()).bytes();
    }

    /**
     * The lines alone, faint, for laying over a learner's drawing, as a {@code g} element in the detail's own axes with y
     * turned down: the heel point is 0 0, x runs to the inside of the building, one unit is one millimetre on paper.
     */
    public String overlayGroup() {
        return new SvgWriter(FaceWidths.shared()).group(OverlaySheet.inDetailAxes(drawing));
    }

    /**
     * The lines alone, faint, as an {@code svg} element that fits exactly over a picture of a learner's sheet.
     *
     * @param toPicture from the detail's own axes to the picture's pixels, y down
     */
    public String overlay(PlaneMap toPicture, int widthPx, int heightPx) {
        Picture overlay = OverlaySheet.overPicture(drawing, toPicture, widthPx, heightPx);
        return new SvgWriter(FaceWidths.shared()).inline(overlay, "drawing overlay");
    }

    private Picture sheet() {
        return new ModelSheet(drawing, options, FaceWidths.shared()).picture();
    }
}
