package wallplate.report.pdf;

import java.awt.Color;
import java.io.Closeable;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.util.Matrix;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.report.Box;

/** One page of a report to draw on, in millimetres. */
final class Canvas implements Closeable {

    private static final float POINTS_PER_MM = 72 / 25.4f;
    /** How far the control points of a quarter circle lie from its ends, as a share of the radius. */
    private static final float CIRCLE = 0.5523f;

    /** Something that draws. */
    @FunctionalInterface
    interface Drawing {
        void draw() throws IOException;
    }

    private final PDPageContentStream content;
    private final ReportFonts fonts;
    private final Optional<Tags.OfPage> tags;

    /** A page that says nothing about what its contents are. */
    Canvas(PDDocument document, PDPage page, ReportFonts fonts) throws IOException {
        this(document, page, fonts, Optional.empty());
    }

    /** A page on which everything that is not drawn by {@link #tagged} is ornament. */
    Canvas(PDDocument document, PDPage page, ReportFonts fonts, Tags tags) throws IOException {
        this(document, page, fonts, Optional.of(tags.page(page)));
    }

    private Canvas(PDDocument document, PDPage page, ReportFonts fonts, Optional<Tags.OfPage> tags)
            throws IOException {
        this.content = new PDPageContentStream(document, page);
        this.fonts = fonts;
        this.tags = tags;
        content.transform(Matrix.getScaleInstance(POINTS_PER_MM, POINTS_PER_MM));
        content.setLineCapStyle(1);
        content.setLineJoinStyle(1);
        if (tags.isPresent()) {
            content.beginMarkedContent(COSName.ARTIFACT);
        }
    }

    /** Draws something that a screen reader reads as what its role says, such as a heading. */
    void tagged(String role, Drawing drawing) throws IOException {
        tagged(role, "", drawing);
    }

    /**
     * The same with a text in its place, as a picture needs one.
     *
     * @param text may be empty
     */
    void tagged(String role, String text, Drawing drawing) throws IOException {
        if (tags.isEmpty()) {
            drawing.draw();
            return;
        }
        content.endMarkedContent();
        content.beginMarkedContent(COSName.getPDFName(role), tags.get().leaf(role, text));
        drawing.draw();
        content.endMarkedContent();
        content.beginMarkedContent(COSName.ARTIFACT);
    }

    /** What is tagged while this draws belongs together, such as the rows of a table. */
    void together(String role, Drawing drawing) throws IOException {
        tags.ifPresent(page -> page.begin(role));
        drawing.draw();
        tags.ifPresent(Tags.OfPage::end);
    }

    /** Sets one line of text with its baseline at y. */
    void text(String text, double x, double y, Type type) throws IOException {
        String shown = fonts.showable(text);
        if (shown.isBlank()) {
            return;
        }
        content.beginText();
        content.setFont(fonts.of(type), (float) type.sizeMm());
        content.setNonStrokingColor(type.colour());
        content.newLineAtOffset((float) x, (float) y);
        content.showText(shown);
        content.endText();
    }

    void textRight(String text, double right, double y, Type type) throws IOException {
        text(text, right - width(text, type), y, type);
    }

    void textCentred(String text, double middle, double y, Type type) throws IOException {
        text(text, middle - width(text, type) / 2, y, type);
    }

    double width(String text, Type type) throws IOException {
        return fonts.width(fonts.showable(text), type);
    }

    /** Sets one line, made to fit by smaller type and, where that is not enough, cut off with three dots. */
    void textFitted(String text, double x, double y, double width, Type type) throws IOException {
        double natural = width(text, type);
        if (natural <= width) {
            text(text, x, y, type);
            return;
        }
        Type smaller = type.sized(Math.max(type.sizeMm() * 0.8, type.sizeMm() * width / natural));
        text(shortened(text, width, smaller), x, y, smaller);
    }

    private String shortened(String text, double width, Type type) throws IOException {
        String kept = text;
        while (width(kept, type) > width && kept.length() > 1) {
            kept = kept.substring(0, kept.length() - 2).stripTrailing() + "\u2026";
        }
        return kept;
    }

    /** Sets a paragraph from a top edge downwards and returns the y of its lower edge. */
    double paragraph(String text, double x, double top, double width, Type type) throws IOException {
        double y = top;
        for (String line : wrapped(text, width, type)) {
            text(line, x, y - type.sizeMm(), type);
            y -= type.lineHeight();
        }
        return y;
    }

    /** How high a paragraph would be. */
    double paragraphHeight(String text, double width, Type type) throws IOException {
        return wrapped(text, width, type).size() * type.lineHeight();
    }

    private List<String> wrapped(String text, double width, Type type) throws IOException {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.strip().split("\\s+")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (!line.isEmpty() && width(longer, type) > width) {
                lines.add(line.toString());
                line = new StringBuilder(word);
            } else {
                line = new StringBuilder(longer);
            }
        }
        lines.add(line.toString());
        return lines;
    }

    void line(double x1, double y1, double x2, double y2, Pen pen) throws IOException {
        use(pen);
        content.moveTo((float) x1, (float) y1);
        content.lineTo((float) x2, (float) y2);
        content.stroke();
    }

    void line(Segment segment, Pen pen) throws IOException {
        line(
                segment.start().x(),
                segment.start().y(),
                segment.end().x(),
                segment.end().y(),
                pen);
    }

    void polyline(Pen pen, Point... points) throws IOException {
        use(pen);
        content.moveTo((float) points[0].x(), (float) points[0].y());
        for (int index = 1; index < points.length; index++) {
            content.lineTo((float) points[index].x(), (float) points[index].y());
        }
        content.stroke();
    }

    void rectangle(Box box, Pen pen) throws IOException {
        use(pen);
        content.addRect((float) box.left(), (float) box.bottom(), (float) box.width(), (float) box.height());
        content.stroke();
    }

    void fill(Box box, Color colour) throws IOException {
        content.setNonStrokingColor(colour);
        content.addRect((float) box.left(), (float) box.bottom(), (float) box.width(), (float) box.height());
        content.fill();
    }

    /** A circle, filled and outlined. */
    void disc(Point centre, double radius, Color fill, Pen pen) throws IOException {
        use(pen);
        content.setNonStrokingColor(fill);
        float x = (float) centre.x();
        float y = (float) centre.y();
        float r = (float) radius;
        float c = r * CIRCLE;
        content.moveTo(x + r, y);
        content.curveTo(x + r, y + c, x + c, y + r, x, y + r);
        content.curveTo(x - c, y + r, x - r, y + c, x - r, y);
        content.curveTo(x - r, y - c, x - c, y - r, x, y - r);
        content.curveTo(x + c, y - r, x + r, y - c, x + r, y);
        content.closePath();
        content.fillAndStroke();
    }

    void triangle(Point one, Point two, Point three, Color fill) throws IOException {
        content.setNonStrokingColor(fill);
        content.moveTo((float) one.x(), (float) one.y());
        content.lineTo((float) two.x(), (float) two.y());
        content.lineTo((float) three.x(), (float) three.y());
        content.fill();
    }

    void image(PDImageXObject image, Box box) throws IOException {
        content.drawImage(image, (float) box.left(), (float) box.bottom(), (float) box.width(), (float) box.height());
    }

    /** From here to {@link #unclip()} nothing shows outside the box. */
    void clip(Box box) throws IOException {
        content.saveGraphicsState();
        content.addRect((float) box.left(), (float) box.bottom(), (float) box.width(), (float) box.height());
        content.clip();
    }

    void unclip() throws IOException {
        content.restoreGraphicsState();
    }

    private void use(Pen pen) throws IOException {
        content.setLineWidth((float) pen.widthMm());
        content.setStrokingColor(pen.colour());
        float[] dash = new float[pen.dashMm().size()];
        for (int index = 0; index < dash.length; index++) {
            dash[index] = pen.dashMm().get(index).floatValue();
        }
        content.setLineDashPattern(dash, 0);
    }

    @Override
    public void close() throws IOException {
        if (tags.isPresent()) {
            content.endMarkedContent();
        }
        content.close();
    }
}
