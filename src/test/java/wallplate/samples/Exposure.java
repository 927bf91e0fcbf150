package wallplate.samples;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import org.jspecify.annotations.Nullable;

/** A picture being taken: the light at each pixel, 0 black to 1 white, and a tint for all of it. */
final class Exposure {

    final int widthPx;
    final int heightPx;
    final float[] light;

    Exposure(int widthPx, int heightPx) {
        this.widthPx = widthPx;
        this.heightPx = heightPx;
        this.light = new float[widthPx * heightPx];
    }

    /** Blurs as a lens or a scanner's row of sensors does; the deviation is in pixels. */
    void blur(double sigmaPx) {
        if (sigmaPx < 0.2) {
            return;
        }
        int reach = (int) Math.ceil(3 * sigmaPx);
        float[] kernel = new float[2 * reach + 1];
        double sum = 0;
        for (int at = -reach; at <= reach; at++) {
            kernel[at + reach] = (float) Math.exp(-at * at / (2 * sigmaPx * sigmaPx));
            sum += kernel[at + reach];
        }
        for (int at = 0; at < kernel.length; at++) {
            kernel[at] /= (float) sum;
        }
        blurRows(kernel, reach);
        blurColumns(kernel, reach);
    }

    private void blurRows(float[] kernel, int reach) {
        float[] row = new float[widthPx];
        for (int y = 0; y < heightPx; y++) {
            int start = y * widthPx;
            System.arraycopy(light, start, row, 0, widthPx);
            for (int x = 0; x < widthPx; x++) {
                float sum = 0;
                for (int at = -reach; at <= reach; at++) {
                    sum += kernel[at + reach] * row[Math.max(0, Math.min(widthPx - 1, x + at))];
                }
                light[start + x] = sum;
            }
        }
    }

    private void blurColumns(float[] kernel, int reach) {
        float[] source = light.clone();
        for (int y = 0; y < heightPx; y++) {
            for (int x = 0; x < widthPx; x++) {
                light[y * widthPx + x] = 0;
            }
            for (int at = -reach; at <= reach; at++) {
                int from = Math.max(0, Math.min(heightPx - 1, y + at)) * widthPx;
                float weight = kernel[at + reach];
                for (int x = 0; x < widthPx; x++) {
                    light[y * widthPx + x] += weight * source[from + x];
                }
            }
        }
    }

    /** Sharpens as scanner software does by default: adds the given share of the difference to a blurred copy. */
    void sharpen(double share) {
        float[] before = light.clone();
        blur(1.2);
        for (int at = 0; at < light.length; at++) {
            light[at] = (float) Math.max(0, Math.min(1, before[at] + share * (before[at] - light[at])));
        }
    }

    /** The finished picture with sensor noise, in grey levels; grey where the tint is null. */
    BufferedImage develop(double noiseLevels, double @Nullable [] tint, Chance chance) {
        boolean colour = tint != null;
        BufferedImage picture = new BufferedImage(
                widthPx, heightPx, colour ? BufferedImage.TYPE_3BYTE_BGR : BufferedImage.TYPE_BYTE_GRAY);
        byte[] bytes = ((DataBufferByte) picture.getRaster().getDataBuffer()).getData();
        float[] noise = noise(chance);
        int drawn = chance.whole(0, noise.length - 1);
        for (int at = 0; at < light.length; at++) {
            double grey = 255 * light[at];
            if (!colour) {
                drawn = (drawn + 1 + (at & 1)) & (noise.length - 1);
                bytes[at] = level(grey + noiseLevels * noise[drawn]);
                continue;
            }
            double shared = noise[(drawn * 3 + at) & (noise.length - 1)] * noiseLevels * 0.8;
            for (int channel = 0; channel < 3; channel++) {
                drawn = (drawn + 1 + (at & 1)) & (noise.length - 1);
                bytes[3 * at + channel] = level(grey * tint[2 - channel] + shared + 0.6 * noiseLevels * noise[drawn]);
            }
        }
        return picture;
    }

    private static float[] noise(Chance chance) {
        float[] noise = new float[1 << 20];
        for (int at = 0; at < noise.length; at++) {
            noise[at] = (float) chance.error(1);
        }
        return noise;
    }

    private static byte level(double grey) {
        return (byte) Math.max(0, Math.min(255, Math.round(grey)));
    }
}
