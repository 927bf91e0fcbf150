package wallplate.drafting.dxf;

import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import wallplate.drafting.paper.Alignment;
import wallplate.drafting.paper.Ink;
import wallplate.drafting.paper.Picture;
import wallplate.geometry.Point;

/**
 * Writes a picture as a DXF file.
 *
 * <p>After the published group codes of release 2000: header, tables with handles, the two obligatory blocks, entities,
 * and a root dictionary. Lines are LINE, lettering TEXT, filled areas SOLID.
 */
public final class DxfWriter {

    private static final String MODEL_SPACE = "1F";
    private static final String PAPER_SPACE = "1B";
    private static final String ROOT_DICTIONARY = "C";
    private static final String GROUP_DICTIONARY = "D";
    private static final String TEXT_STYLE = "LETTERING";

    private final Picture picture;
    private final double enlargement;
    private final Point origin;

    /**
     * @param enlargement real millimetres for one on paper
     * @param origin the place on the sheet that becomes 0, 0
     */
    public DxfWriter(Picture picture, double enlargement, Point origin) {
        this.picture = picture;
        this.enlargement = enlargement;
        this.origin = origin;
    }

    public byte[] bytes() {
        DxfText body = new DxfText();
        tables(body);
        blocks(body);
        body.section("ENTITIES");
        picture.inks().forEach(ink -> entity(body, ink));
        body.endSection();
        objects(body);
        body.pair(0, "EOF");
        return (header(body.seed()) + body).getBytes(StandardCharsets.US_ASCII);
    }

    private String header(String seed) {
        DxfText header = new DxfText();
        header.pair(999, DxfText.ascii(picture.title()));
        header.pair(999, "Real size, one unit is one millimetre");
        header.pair(999, DxfText.ascii(picture.description()));
        header.section("HEADER");
        header.pair(9, "$ACADVER").pair(1, "AC1015");
        header.pair(9, "$HANDSEED").pair(5, seed);
        header.pair(9, "$DWGCODEPAGE").pair(3, "ANSI_1252");
        header.pair(9, "$INSUNITS").pair(70, 4);
        header.pair(9, "$MEASUREMENT").pair(70, 1);
        header.pair(9, "$LUNITS").pair(70, 2);
        header.pair(9, "$LTSCALE").pair(40, enlargement);
        header.pair(9, "$LWDISPLAY").pair(290, 1);
        header.pair(9, "$EXTMIN").place(0, x(Point.ORIGIN), y(Point.ORIGIN));
        Point far = new Point(picture.widthMm(), picture.heightMm());
        header.pair(9, "$EXTMAX").place(0, x(far), y(far));
        header.endSection();
        header.section("CLASSES").endSection();
        return header.toString();
    }

    private Collection<DxfLayer> layers() {
        Map<String, DxfLayer> layers = new TreeMap<>();
        for (Ink ink : picture.inks()) {
            DxfLayer layer = DxfLayer.of(ink);
            // A layer is as heavy as its heaviest line; lines that differ carry their own weight.
            layers.merge(layer.name(), layer, (one, other) -> one.weight() >= other.weight() ? one : other);
        }
        return layers.values();
    }

    private void tables(DxfText body) {
        body.section("TABLES");
        viewports(body);
        lineTypes(body);
        layerTable(body);
        styles(body);
        table(body, "VIEW", "6", 0).pair(0, "ENDTAB");
        table(body, "UCS", "7", 0).pair(0, "ENDTAB");
        table(body, "APPID", "9", 1);
        record(body, "APPID", "12", "9", "AcDbRegAppTableRecord").pair(2, "ACAD").pair(70, 0).pair(0, "ENDTAB");
        dimensionStyles(body);
        blockRecords(body);
        body.endSection();
    }

    private static DxfText table(DxfText body, String name, String handle, int count) {
        return body.pair(0, "TABLE")
                .pair(2, name)
                .pair(5, handle)
                .pair(330, "0")
                .pair(100, "AcDbSymbolTable")
                .pair(70, count);
    }

    private static DxfText record(DxfText body, String type, String handle, String table, String subclass) {
        return body.pair(0, type)
                .pair(5, handle)
                .pair(330, table)
                .pair(100, "AcDbSymbolTableRecord")
                .pair(100, subclass);
    }

    private void viewports(DxfText body) {
        table(body, "VPORT", "8", 1);
        double width = picture.widthMm() * enlargement;
        double height = picture.heightMm() * enlargement;
        record(body, "VPORT", "29", "8", "AcDbViewportTableRecord")
                .pair(2, "*ACTIVE")
                .pair(70, 0)
                .pair(10, 0.0)
                .pair(20, 0.0)
                .pair(11, 1.0)
                .pair(21, 1.0)
                .pair(12, x(Point.ORIGIN) + width / 2)
                .pair(22, y(Point.ORIGIN) + height / 2)
                .pair(40, height * 1.05)
                .pair(41, width / height)
                .pair(0, "ENDTAB");
    }

    private static void lineTypes(DxfText body) {
        table(body, "LTYPE", "5", 5);
        lineType(body, "14", "BYBLOCK", "", List.of());
        lineType(body, "15", "BYLAYER", "", List.of());
        lineType(body, "16", "CONTINUOUS", "Solid line", List.of());
        lineType(body, "17", "CENTER", "Long dash, dot", List.of(6.0, -1.2, 0.4, -1.2));
        lineType(body, "18", "DASHED", "Dashes", List.of(2.2, -1.1));
        body.pair(0, "ENDTAB");
    }

    private static void lineType(DxfText body, String handle, String name, String words, List<Double> dashes) {
        record(body, "LTYPE", handle, "5", "AcDbLinetypeTableRecord")
                .pair(2, name)
                .pair(70, 0)
                .pair(3, words)
                .pair(72, 65)
                .pair(73, dashes.size())
                .pair(40, dashes.stream().mapToDouble(Math::abs).sum());
        for (double dash : dashes) {
            body.pair(49, dash).pair(74, 0);
        }
    }

    private void layerTable(DxfText body) {
        Collection<DxfLayer> layers = layers();
        table(body, "LAYER", "2", layers.size() + 1);
        layer(body, "10", new DxfLayer("0", 7, 25, "CONTINUOUS"));
        for (DxfLayer layer : layers) {
            layer(body, body.newHandle(), layer);
        }
        body.pair(0, "ENDTAB");
    }

    private static void layer(DxfText body, String handle, DxfLayer layer) {
        record(body, "LAYER", handle, "2", "AcDbLayerTableRecord")
                .pair(2, layer.name())
                .pair(70, 0)
                .pair(62, layer.colour())
                .pair(6, layer.lineType())
                .pair(370, layer.weight());
    }

    private static void styles(DxfText body) {
        table(body, "STYLE", "3", 2);
        style(body, "11", "STANDARD", "txt", 1.0);
        style(body, "13", TEXT_STYLE, "txt", 0.82);
        body.pair(0, "ENDTAB");
    }

    private static void style(DxfText body, String handle, String name, String font, double width) {
        record(body, "STYLE", handle, "3", "AcDbTextStyleTableRecord")
                .pair(2, name)
                .pair(70, 0)
                .pair(40, 0.0)
                .pair(41, width)
                .pair(50, 0.0)
                .pair(71, 0)
                .pair(42, 2.5)
                .pair(3, font)
                .pair(4, "");
    }

    private static void dimensionStyles(DxfText body) {
        table(body, "DIMSTYLE", "A", 1).pair(100, "AcDbDimStyleTable");
        body.pair(0, "DIMSTYLE")
                .pair(105, "27")
                .pair(330, "A")
                .pair(100, "AcDbSymbolTableRecord")
                .pair(100, "AcDbDimStyleTableRecord")
                .pair(2, "STANDARD")
                .pair(70, 0)
                .pair(0, "ENDTAB");
    }

    private static void blockRecords(DxfText body) {
        table(body, "BLOCK_RECORD", "1", 2);
        record(body, "BLOCK_RECORD", MODEL_SPACE, "1", "AcDbBlockTableRecord").pair(2, "*MODEL_SPACE");
        record(body, "BLOCK_RECORD", PAPER_SPACE, "1", "AcDbBlockTableRecord").pair(2, "*PAPER_SPACE");
        body.pair(0, "ENDTAB");
    }

    private static void blocks(DxfText body) {
        body.section("BLOCKS");
        block(body, MODEL_SPACE, "20", "21", "*MODEL_SPACE");
        block(body, PAPER_SPACE, "1C", "1D", "*PAPER_SPACE");
        body.endSection();
    }

    private static void block(DxfText body, String owner, String handle, String endHandle, String name) {
        body.pair(0, "BLOCK")
                .pair(5, handle)
                .pair(330, owner)
                .pair(100, "AcDbEntity")
                .pair(8, "0")
                .pair(100, "AcDbBlockBegin")
                .pair(2, name)
                .pair(70, 0)
                .place(0, 0, 0)
                .pair(3, name)
                .pair(1, "");
        body.pair(0, "ENDBLK")
                .pair(5, endHandle)
                .pair(330, owner)
                .pair(100, "AcDbEntity")
                .pair(8, "0")
                .pair(100, "AcDbBlockEnd");
    }

    private static void objects(DxfText body) {
        body.section("OBJECTS");
        body.pair(0, "DICTIONARY")
                .pair(5, ROOT_DICTIONARY)
                .pair(330, "0")
                .pair(100, "AcDbDictionary")
                .pair(281, 1)
                .pair(3, "ACAD_GROUP")
                .pair(350, GROUP_DICTIONARY);
        body.pair(0, "DICTIONARY")
                .pair(5, GROUP_DICTIONARY)
                .pair(330, ROOT_DICTIONARY)
                .pair(100, "AcDbDictionary")
                .pair(281, 1);
        body.endSection();
    }

    private void entity(DxfText body, Ink ink) {
        if (ink instanceof Ink.Stroke stroke) {
            start(body, "LINE", ink)
                    .pair(370, (int) Math.round(stroke.pen().widthMm() * 100))
                    .pair(100, "AcDbLine");
            place(body, 0, stroke.segment().start());
            place(body, 1, stroke.segment().end());
        } else if (ink instanceof Ink.Lettering lettering) {
            text(body, lettering);
        } else if (ink instanceof Ink.Area area) {
            area(body, area);
        }
    }

    private static DxfText start(DxfText body, String type, Ink ink) {
        return body.pair(0, type)
                .pair(5, body.newHandle())
                .pair(330, MODEL_SPACE)
                .pair(100, "AcDbEntity")
                .pair(8, DxfLayer.of(ink).name());
    }

    private void text(DxfText body, Ink.Lettering lettering) {
        start(body, "TEXT", lettering).pair(100, "AcDbText");
        place(body, 0, lettering.at());
        body.pair(40, lettering.heightMm() * enlargement).pair(1, DxfText.ascii(lettering.text()));
        if (lettering.angleDegrees() != 0) {
            body.pair(50, lettering.angleDegrees());
        }
        body.pair(41, 0.82).pair(7, TEXT_STYLE);
        if (lettering.alignment() != Alignment.START) {
            body.pair(72, lettering.alignment() == Alignment.MIDDLE ? 1 : 2);
            place(body, 1, lettering.at());
        }
        body.pair(100, "AcDbText");
    }

    /** As a fan of triangles; a SOLID takes its third and fourth corner alike for a triangle. */
    private void area(DxfText body, Ink.Area area) {
        List<Point> corners = area.corners();
        for (int corner = 1; corner + 1 < corners.size(); corner++) {
            start(body, "SOLID", area).pair(100, "AcDbTrace");
            place(body, 0, corners.get(0));
            place(body, 1, corners.get(corner));
            place(body, 2, corners.get(corner + 1));
            place(body, 3, corners.get(corner + 1));
        }
    }

    private void place(DxfText body, int further, Point point) {
        body.place(further, x(point), y(point));
    }

    private double x(Point point) {
        return (point.x() - origin.x()) * enlargement;
    }

    private double y(Point point) {
        return (point.y() - origin.y()) * enlargement;
    }
}
