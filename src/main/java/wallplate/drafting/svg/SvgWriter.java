package wallplate.drafting.svg;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wallplate.drafting.paper.Alignment;
import wallplate.drafting.paper.Decimals;
import wallplate.drafting.paper.Ink;
import wallplate.drafting.paper.Owner;
import wallplate.drafting.paper.Pen;
import wallplate.drafting.paper.Picture;
import wallplate.drafting.paper.Shade;
import wallplate.drafting.paper.TextMeasure;
import wallplate.drafting.paper.Typeface;
import wallplate.geometry.Point;

/**
 * Writes a picture as SVG text.
 *
 * <p>Ink is grouped by part ({@code g.part} with {@code data-part} and {@code data-index}) and within it by kind
 * ({@code g.cut-outline}, {@code g.dimension} and so on); each line carries {@code data-edge}. The order of the groups
 * is that of first appearance, so the same picture gives the same text.
 */
public final class SvgWriter {

    private static final String NAMESPACE = "http://www.w3.org/2000/svg";

    /** Graphite on warm paper, for files that stand alone; on a page the page decides. */
    private static final String GRAPHITE = "#26292C";

    private final TextMeasure measure;

    public SvgWriter(TextMeasure measure) {
        this.measure = measure;
    }

    /** For a page: no size of its own, no colour of its own, no style element. */
    public String inline(Picture picture) {
        return inline(picture, "drawing");
    }

    /** The same with class names of the caller's choice. */
    public String inline(Picture picture, String classes) {
        StringBuilder svg = new StringBuilder(32_768);
        svg.append("<svg xmlns=\"").append(NAMESPACE).append('"');
        attribute(svg, "class", classes);
        viewBox(svg, picture);
        accessibleNames(svg, picture);
        body(svg, picture.inks(), picture.heightMm());
        return svg.append("</svg>\n").toString();
    }

    /** For a file: true size in millimetres, graphite on white. */
    public String standalone(Picture picture) {
        StringBuilder svg = new StringBuilder(32_768);
        svg.append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"").append(NAMESPACE).append('"');
        attribute(svg, "class", "drawing");
        attribute(svg, "width", Decimals.figure(picture.widthMm()) + "mm");
        attribute(svg, "height", Decimals.figure(picture.heightMm()) + "mm");
        attribute(svg, "color", GRAPHITE);
        viewBox(svg, picture);
        accessibleNames(svg, picture);
        svg.append("<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n");
        body(svg, picture.inks(), picture.heightMm());
        return svg.append("</svg>\n").toString();
    }

    /** The ink alone as a group, the picture's origin at the group's own, y turned down. */
    public String group(Picture picture) {
        StringBuilder svg = new StringBuilder(16_384);
        body(svg, picture.inks(), 0);
        return svg.toString();
    }

    private static void viewBox(StringBuilder svg, Picture picture) {
        svg.append(" viewBox=\"0 0 ");
        Decimals.append(svg, picture.widthMm());
        svg.append(' ');
        Decimals.append(svg, picture.heightMm());
        svg.append('"');
    }

    private static void accessibleNames(StringBuilder svg, Picture picture) {
        String titleId = picture.name() + "-title";
        String descriptionId = picture.name() + "-description";
        attribute(svg, "role", "img");
        attribute(svg, "aria-labelledby", titleId + " " + descriptionId);
        svg.append(">\n<title");
        attribute(svg, "id", titleId);
        svg.append('>');
        escape(svg, picture.title());
        svg.append("</title>\n<desc");
        attribute(svg, "id", descriptionId);
        svg.append('>');
        escape(svg, picture.description());
        svg.append("</desc>\n");
    }

    private void body(StringBuilder svg, List<Ink> inks, double heightMm) {
        svg.append("<g fill=\"none\" stroke=\"currentColor\" stroke-linecap=\"round\" stroke-linejoin=\"round\">\n");
        byPart(inks).forEach((part, ofPart) -> part(svg, part, ofPart, heightMm));
        svg.append("</g>\n");
    }

    private record PartKey(String part, int index) {}

    private record Style(String layer, Pen pen, Shade shade) {}

    private static Map<PartKey, List<Ink>> byPart(List<Ink> inks) {
        Map<PartKey, List<Ink>> parts = new LinkedHashMap<>();
        for (Ink ink : inks) {
            PartKey key = new PartKey(ink.owner().part(), ink.owner().index());
            parts.computeIfAbsent(key, unused -> new ArrayList<>()).add(ink);
        }
        return parts;
    }

    private void part(StringBuilder svg, PartKey key, List<Ink> inks, double heightMm) {
        if (key.part().isEmpty()) {
            svg.append("<g class=\"sheet\">\n");
        } else {
            svg.append("<g");
            attribute(svg, "class", "part");
            attribute(svg, "data-part", key.part());
            attribute(svg, "data-index", Integer.toString(key.index()));
            svg.append(">\n");
        }
        byStyle(inks).forEach((style, strokes) -> strokes(svg, style, strokes, heightMm));
        for (Ink ink : inks) {
            if (ink instanceof Ink.Lettering lettering) {
                lettering(svg, lettering, heightMm);
            } else if (ink instanceof Ink.Area area) {
                area(svg, area, heightMm);
            }
        }
        svg.append("</g>\n");
    }

    private static Map<Style, List<Ink.Stroke>> byStyle(List<Ink> inks) {
        Map<Style, List<Ink.Stroke>> styles = new LinkedHashMap<>();
        for (Ink ink : inks) {
            if (ink instanceof Ink.Stroke stroke) {
                Style style = new Style(stroke.owner().layer().word(), stroke.pen(), stroke.shade());
                styles.computeIfAbsent(style, unused -> new ArrayList<>()).add(stroke);
            }
        }
        return styles;
    }

    private static void strokes(StringBuilder svg, Style style, List<Ink.Stroke> strokes, double heightMm) {
        svg.append("<g");
        attribute(svg, "class", classes(style.layer(), style.shade()));
        attribute(svg, "stroke-width", Decimals.figure(style.pen().widthMm()));
        if (!style.pen().dashesMm().isEmpty()) {
            attribute(svg, "stroke-dasharray", dashes(style.pen()));
        }
        if (style.shade() != Shade.FULL) {
            attribute(svg, "stroke-opacity", Decimals.figure(style.shade().strength()));
        }
        svg.append('>');
        for (int first = 0; first < strokes.size(); ) {
            first = path(svg, strokes, first, heightMm);
        }
        svg.append("</g>\n");
    }

    /** Writes the lines from the first on that share its edge as one path; answers the index after them. */
    private static int path(StringBuilder svg, List<Ink.Stroke> strokes, int first, double heightMm) {
        String edge = strokes.get(first).owner().edge();
        svg.append("<path");
        if (!edge.isEmpty()) {
            attribute(svg, "data-edge", edge);
        }
        svg.append(" d=\"");
        int next = first;
        while (next < strokes.size() && strokes.get(next).owner().edge().equals(edge)) {
            svg.append('M');
            place(svg, strokes.get(next).segment().start(), heightMm);
            svg.append('L');
            place(svg, strokes.get(next).segment().end(), heightMm);
            next++;
        }
        svg.append("\"/>");
        return next;
    }

    private static String dashes(Pen pen) {
        StringBuilder dashes = new StringBuilder();
        for (double length : pen.dashesMm()) {
            if (!dashes.isEmpty()) {
                dashes.append(' ');
            }
            Decimals.append(dashes, length);
        }
        return dashes.toString();
    }

    private static String classes(String layer, Shade shade) {
        return switch (shade) {
            case FULL -> layer;
            case LIGHT -> layer + " light";
            case FAINT -> layer + " faint";
        };
    }

    private void lettering(StringBuilder svg, Ink.Lettering lettering, double heightMm) {
        double width = measure.widthMm(lettering);
        svg.append("<text");
        attribute(svg, "class", classes(lettering.owner().layer().word(), lettering.shade()));
        position(svg, lettering, heightMm);
        attribute(svg, "font-family", "'" + lettering.typeface().family() + "', sans-serif");
        attribute(svg, "font-weight", Integer.toString(lettering.typeface().weight()));
        attribute(svg, "font-size", Decimals.figure(Typeface.sizeForCapitals(lettering.heightMm())));
        // The planned length is held even where the face is missing and another one steps in.
        attribute(svg, "textLength", Decimals.figure(width));
        attribute(svg, "lengthAdjust", "spacingAndGlyphs");
        if (lettering.alignment() != Alignment.START) {
            attribute(svg, "text-anchor", lettering.alignment().word());
        }
        if (lettering.shade() != Shade.FULL) {
            attribute(svg, "fill-opacity", Decimals.figure(lettering.shade().strength()));
        }
        svg.append(" fill=\"currentColor\" stroke=\"none\">");
        escape(svg, lettering.text());
        svg.append("</text>\n");
    }

    private static void position(StringBuilder svg, Ink.Lettering lettering, double heightMm) {
        StringBuilder place = new StringBuilder(32);
        place(place, lettering.at(), heightMm);
        int space = place.indexOf(" ");
        attribute(svg, "x", place.substring(0, space));
        attribute(svg, "y", place.substring(space + 1));
        if (lettering.angleDegrees() != 0) {
            StringBuilder turn = new StringBuilder("rotate(");
            Decimals.append(turn, -lettering.angleDegrees());
            attribute(svg, "transform", turn.append(' ').append(place).append(')').toString());
        }
    }

    private static void area(StringBuilder svg, Ink.Area area, double heightMm) {
        svg.append("<path");
        attribute(svg, "class", classes(area.owner().layer().word(), area.shade()));
        svg.append(" fill=\"currentColor\" stroke=\"none\" d=\"M");
        for (int corner = 0; corner < area.corners().size(); corner++) {
            if (corner > 0) {
                svg.append('L');
            }
            place(svg, area.corners().get(corner), heightMm);
        }
        svg.append("Z\"/>\n");
    }

    private static void place(StringBuilder svg, Point point, double heightMm) {
        Decimals.append(svg, point.x());
        svg.append(' ');
        Decimals.append(svg, heightMm - point.y());
    }

    private static void attribute(StringBuilder svg, String name, String value) {
        svg.append(' ').append(name).append("=\"");
        escape(svg, value);
        svg.append('"');
    }

    static void escape(StringBuilder svg, String text) {
        for (int index = 0; index < text.length(); index++) {
            char letter = text.charAt(index);
            switch (letter) {
                case '&' -> svg.append("&amp;");
                case '<' -> svg.append("&lt;");
                case '>' -> svg.append("&gt;");
                case '"' -> svg.append("&quot;");
                default -> svg.append(allowed(letter) ? letter : '\uFFFD');
            }
        }
    }

    /** XML 1.0 has no place for most control characters, not even escaped. */
    private static boolean allowed(char letter) {
        return letter >= ' ' || letter == '\t' || letter == '\n' || letter == '\r';
    }
}
