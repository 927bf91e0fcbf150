package wallplate.samples;

import java.awt.image.BufferedImage;
import java.util.Map;

/**
 * How a sheet became a picture.
 *
 * @param condition what the truth file says about the capture
 */
record Capture(BufferedImage picture, PixelMap map, Map<String, Object> condition) {

    /** The left part of the picture alone, as when a page is pulled out of a scanner too early. */
    Capture cutOff(double share) {
        int width = (int) (picture.getWidth() * share);
        BufferedImage part = new BufferedImage(width, picture.getHeight(), picture.getType());
        part.createGraphics().drawImage(picture, 0, 0, null);
        return new Capture(part, map, condition);
    }
}
