package wallplate.measure;

import java.io.DataInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import wallplate.geometry.PlaneMap;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.sheet.Calibration;
import wallplate.sheet.InkImage;
import wallplate.sheet.LevelPage;

/** A test sheet brought level by its true map, so that measuring can be tried apart from reading. */
record TruthPage(JsonNode truth, LevelPage page, double tiltDegrees, double barFactor, double w, double h) {

    static final double PPM = 10;

    static TruthPage load(Path truthFile, Path pgm, double w, double h) throws IOException {
        JsonNode truth = JsonMapper.shared().readTree(Files.readString(truthFile));
        int[] dims = new int[2];
        byte[] grey = readPgm(pgm, dims);
        double tilt = truth.path("condition").path("tilt-of-drawing").asDouble(0);
        JsonNode bar = truth.path("bar");
        double factor = bar.path("present").asBoolean() ? bar.path("trueMm").asDouble() / bar.path("nominalMm").asDouble() : 1;
        int pw = (int) Math.round(w * PPM);
        int ph = (int) Math.round(h * PPM);
        double[] g = new double[pw * ph];
        double c = Math.cos(Math.toRadians(tilt)) * factor, s = Math.sin(Math.toRadians(tilt)) * factor;
        JsonNode map = truth.path("toPixels");
        boolean photo = map.has("homography");
        double[] m = new double[9];
        JsonNode rows = map.has("affine") ? map.path("affine") : map.path("homography");
        for (int i = 0; i < 2; i++) for (int j = 0; j < 3; j++) m[i * 3 + j] = rows.get(i).get(j).asDouble();
        m[8] = 1;
        if (photo) for (int j = 0; j < 3; j++) m[6 + j] = rows.get(2).get(j).asDouble();
        double k1 = map.path("radial").path("k1").asDouble(0), cx = map.path("radial").path("cx").asDouble(0), cy = map.path("radial").path("cy").asDouble(0), rc = map.path("radial").path("rc").asDouble(1);
        double[] sub = {0.25, 0.75};
        for (int y = 0; y < ph; y++) for (int x = 0; x < pw; x++) {
            double sum = 0;
            for (double oy : sub) for (double ox : sub) {
                double px = (x + ox) / PPM - w / 2, py = (ph - y - oy) / PPM - h / 2;
                double sx = c * px - s * py + w / 2, sy = s * px + c * py + h / 2;
                if (sx < 0 || sy < 0 || sx > w || sy > h) { sum += -1000; continue; }
                double u = m[0] * sx + m[1] * sy + m[2], v = m[3] * sx + m[4] * sy + m[5], q = m[6] * sx + m[7] * sy + m[8];
                u /= q; v /= q;
                if (photo) { double r2 = ((u - cx) * (u - cx) + (v - cy) * (v - cy)) / (rc * rc); u = cx + (u - cx) * (1 + k1 * r2); v = cy + (v - cy) * (1 + k1 * r2); }
                sum += sample(grey, dims[0], dims[1], u - 0.5, v - 0.5);
            }
            g[y * pw + x] = sum < 0 ? -1 : sum / 4;
        }
        byte[] ink = flatten(g, pw, ph);
        PlaneMap none = new PlaneMap() {
            public Point apply(Point p) { return p; }
            public PlaneMap inverse() { return this; }
        };
        LevelPage page = new LevelPage(new InkImage(pw, ph, PPM, ink), none, PPM, 0, photo,
                new Calibration(Calibration.Source.REFERENCE_BAR, 100, 0.1, 0.1), Optional.empty(), List.of());
        return new TruthPage(truth, page, tilt, factor, w, h);
    }

    /** Sheet mm of the truth to page mm. */
    Point toPage(double sx, double sy) {
        double c = Math.cos(Math.toRadians(tiltDegrees)) / barFactor, s = Math.sin(Math.toRadians(tiltDegrees)) / barFactor;
        double dx = sx - w / 2, dy = sy - h / 2;
        return new Point(c * dx + s * dy + w / 2, -s * dx + c * dy + h / 2);
    }

    Map<String, Segment> lines() {
        Map<String, Segment> out = new java.util.LinkedHashMap<>();
        truth.path("lines").properties().forEach(e -> {
            JsonNode l = e.getValue();
            if (l.size() == 4) out.put(e.getKey(), new Segment(toPage(l.get(0).asDouble(), l.get(1).asDouble()), toPage(l.get(2).asDouble(), l.get(3).asDouble())));
        });
        return out;
    }

    private static double sample(byte[] g, int w, int h, double x, double y) {
        int ix = (int) Math.floor(x), iy = (int) Math.floor(y);
        if (ix < 0 || iy < 0 || ix + 1 >= w || iy + 1 >= h) return -1000;
        double fx = x - ix, fy = y - iy;
        int i = iy * w + ix;
        return ((g[i] & 255) * (1 - fx) + (g[i + 1] & 255) * fx) * (1 - fy) + ((g[i + w] & 255) * (1 - fx) + (g[i + w + 1] & 255) * fx) * fy;
    }

    static byte[] flatten(double[] g, int w, int h) {
        int f = 5, sw = w / f, sh = h / f;
        double[] small = new double[sw * sh];
        for (int y = 0; y < sh; y++) for (int x = 0; x < sw; x++) {
            double sum = 0; int n = 0;
            for (int j = 0; j < f; j++) for (int i = 0; i < f; i++) { double v = g[(y * f + j) * w + x * f + i]; if (v >= 0) { sum += v; n++; } }
            small[y * sw + x] = n > 12 ? sum / n : -1;
        }
        double[] bg = morph(small, sw, sh, 5, true);
        bg = morph(bg, sw, sh, 5, false);
        bg = blur(bg, sw, sh, 4); bg = blur(bg, sw, sh, 4);
        byte[] ink = new byte[w * h];
        for (int y = 0; y < h; y++) for (int x = 0; x < w; x++) {
            double v = g[y * w + x];
            double b = bg[Math.min(sh - 1, y / f) * sw + Math.min(sw - 1, x / f)];
            if (v < 0 || b <= 0) continue;
            ink[y * w + x] = (byte) Math.max(0, Math.min(255, Math.round((b - v) / b * 255)));
        }
        return ink;
    }

    private static double[] morph(double[] a, int w, int h, int r, boolean max) {
        double[] t = new double[a.length], o = new double[a.length];
        for (int y = 0; y < h; y++) for (int x = 0; x < w; x++) { double m = max ? -1 : 1e9; for (int i = Math.max(0, x - r); i <= Math.min(w - 1, x + r); i++) { double v = a[y * w + i]; if (max ? v > m : v >= 0 && v < m) m = v; } t[y * w + x] = m > 1e8 ? -1 : m; }
        for (int y = 0; y < h; y++) for (int x = 0; x < w; x++) { double m = max ? -1 : 1e9; for (int i = Math.max(0, y - r); i <= Math.min(h - 1, y + r); i++) { double v = t[i * w + x]; if (max ? v > m : v >= 0 && v < m) m = v; } o[y * w + x] = m > 1e8 ? -1 : m; }
        return o;
    }

    private static double[] blur(double[] a, int w, int h, int r) {
        double[] t = new double[a.length], o = new double[a.length];
        for (int y = 0; y < h; y++) for (int x = 0; x < w; x++) { double m = 0; int n = 0; for (int i = Math.max(0, x - r); i <= Math.min(w - 1, x + r); i++) if (a[y * w + i] >= 0) { m += a[y * w + i]; n++; } t[y * w + x] = n > 0 ? m / n : -1; }
        for (int y = 0; y < h; y++) for (int x = 0; x < w; x++) { double m = 0; int n = 0; for (int i = Math.max(0, y - r); i <= Math.min(h - 1, y + r); i++) if (t[i * w + x] >= 0) { m += t[i * w + x]; n++; } o[y * w + x] = n > 0 ? m / n : -1; }
        return o;
    }

    private static byte[] readPgm(Path file, int[] dims) throws IOException {
        try (InputStream in = Files.newInputStream(file); DataInputStream data = new DataInputStream(new java.io.BufferedInputStream(in, 1 << 20))) {
            int[] head = new int[3]; int n = 0; int b = data.read(); b = data.read();
            while (n < 3) { b = data.read(); if (Character.isDigit(b)) { int v = 0; while (Character.isDigit(b)) { v = v * 10 + b - '0'; b = data.read(); } head[n++] = v; } }
            dims[0] = head[0]; dims[1] = head[1];
            byte[] out = new byte[head[0] * head[1]];
            data.readFully(out);
            return out;
        }
    }
}
