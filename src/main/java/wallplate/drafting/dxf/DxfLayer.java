package wallplate.drafting.dxf;

import java.util.Locale;
import wallplate.drafting.paper.Ink;
import wallplate.drafting.paper.Owner;
import wallplate.drafting.paper.Pen;

/**
 * A layer of the file.
 *
 * @param colour of the numbered palette: 7 is black or white, 8 grey
 * @param weight thickness in hundredths of a millimetre
 * @param lineType of the file's line type table
 */
record DxfLayer(String name, int colour, int weight, String lineType) {

    static DxfLayer of(Ink ink) {
        Pen pen = ink instanceof Ink.Stroke stroke ? stroke.pen() : Pen.THIN;
        return new DxfLayer(name(ink.owner(), pen), colour(pen), (int) Math.round(pen.widthMm() * 100), lineType(pen));
    }

    /** Such as {@code RAFTER-CUT-OUTLINE}; centre lines have layers of their own because a layer has one line type. */
    private static String name(Owner owner, Pen pen) {
        String part = owner.part().isEmpty() ? "" : owner.part() + "-";
        String chain = pen == Pen.CHAIN ? "-centre" : "";
        return (part + owner.layer().word() + chain).toUpperCase(Locale.ROOT);
    }

    private static int colour(Pen pen) {
        return switch (pen) {
            case HEAVY, THICK, MEDIUM, THIN -> 7;
            case FINE, CHAIN, DASHED -> 8;
        };
    }

    private static String lineType(Pen pen) {
        return switch (pen) {
            case CHAIN -> "CENTER";
            case DASHED -> "DASHED";
            default -> "CONTINUOUS";
        };
    }
}
