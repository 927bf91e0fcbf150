package wallplate.samples;

import java.awt.image.BufferedImage;
import java.util.Map;

/**
 * How a sheet became a picture.
 *
 * @param condition what the truth file says about the capture
 */
record Capture(BufferedImage picture, PixelMap map, Map<String, Object> condition) {}
