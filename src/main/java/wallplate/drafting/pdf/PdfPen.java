package wallplate.drafting.pdf;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.util.Matrix;
import org.jspecify.annotations.Nullable;
import wallplate.drafting.paper.Ink;
import wallplate.drafting.paper.Pen;
import wallplate.drafting.paper.Shade;
import wallplate.drafting.paper.Typeface;
import wallplate.geometry.Point;

/** Inks one content stream whose unit is the millimetre; changes pen and shade only where they differ. */
final class PdfPen {

    private static final int ROUND = 1;

    private final PDPageContentStream content;
    private final EmbeddedFaces faces;
    private @Nullable Pen pen;
    private @Nullable Shade lineShade;
    private @Nullable Shade fillShade;

    PdfPen(PDPageContentStream content, EmbeddedFaces faces) throws IOException {
        this.content = content;
        this.faces = faces;
        content.setLineCapStyle(ROUND);
        content.setLineJoinStyle(ROUND);
    }

    void ink(Ink ink) throws IOException {
        if (ink instanceof Ink.Stroke stroke) {
            stroke(stroke);
        } else if (ink instanceof Ink.Lettering lettering) {
            lettering(lettering);
        } else if (ink instanceof Ink.Area area) {
            area(area);
        }
    }

    private void stroke(Ink.Stroke stroke) throws IOException {
        take(stroke.pen(), stroke.shade());
        move(stroke.segment().start());
        line(stroke.segment().end());
        content.stroke();
    }

    private void take(Pen next, Shade shade) throws IOException {
        if (next != pen) {
            content.setLineWidth((float) next.widthMm());
            content.setLineDashPattern(dashes(next), 0);
            pen = next;
        }
        if (shade != lineShade) {
            content.setStrokingColor(grey(shade));
            lineShade = shade;
        }
    }

    private static float[] dashes(Pen pen) {
        float[] dashes = new float[pen.dashesMm().size()];
        for (int index = 0; index < dashes.length; index++) {
            dashes[index] = pen.dashesMm().get(index).floatValue();
        }
        return dashes;
    }

    private static float grey(Shade shade) {
        return (float) (1 - shade.strength());
    }

    private void fill(Shade shade) throws IOException {
        if (shade != fillShade) {
            content.setNonStrokingColor(grey(shade));
            fillShade = shade;
        }
    }

    private void area(Ink.Area area) throws IOException {
        fill(area.shade());
        List<Point> corners = area.corners();
        move(corners.get(0));
        for (Point corner : corners.subList(1, corners.size())) {
            line(corner);
        }
        content.closePath();
        content.fill();
    }

    private void lettering(Ink.Lettering lettering) throws IOException {
        if (lettering.text().isEmpty()) {
            return;
        }
        fill(lettering.shade());
        List<EmbeddedFaces.Run> runs = faces.runs(lettering.text(), lettering.typeface());
        float size = (float) Typeface.sizeForCapitals(lettering.heightMm());
        double width = 0;
        for (EmbeddedFaces.Run run : runs) {
            width += run.font().getStringWidth(run.text()) / 1000 * size;
        }
        Point start = lettering.start(width);
        content.beginText();
        content.setTextMatrix(Matrix.getRotateInstance(
                Math.toRadians(lettering.angleDegrees()), (float) start.x(), (float) start.y()));
        for (EmbeddedFaces.Run run : runs) {
            content.setFont(run.font(), size);
            content.showText(run.text());
        }
        content.endText();
    }

    private void move(Point point) throws IOException {
        content.moveTo((float) point.x(), (float) point.y());
    }

    private void line(Point point) throws IOException {
        content.lineTo((float) point.x(), (float) point.y());
    }
}
