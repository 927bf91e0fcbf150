package wallplate.drafting.paper;

/**
 * What a piece of ink belongs to.
 *
 * @param layer what kind of ink it is
 * @param part the part of the drawing, such as {@code wall-plate}; empty for what belongs to none
 * @param index which of several like parts, from 0
 * @param edge which line of the part; empty for lettering and dimensions
 */
public record Owner(Layer layer, String part, int index, String edge) {

    /** The ink of a page that belongs to no part. */
    public static Owner of(Layer layer) {
        return new Owner(layer, "", 0, "");
    }

    public static Owner of(Layer layer, String part) {
        return new Owner(layer, part, 0, "");
    }
}
