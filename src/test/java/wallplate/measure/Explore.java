package wallplate.measure;

import java.nio.file.*;
import java.util.*;
import wallplate.geometry.Vector;
import wallplate.geometry.*;
import wallplate.sheet.InkImage;

final class Explore {
    static double[] fmt(String task) { return task.startsWith("ferry") ? new double[] {420, 297} : new double[] {297, 210}; }

    public static void main(String[] a) throws Exception {
        Map<String, double[]> stat = new TreeMap<>();
        try (var s = Files.walk(Path.of("../shared/scans/dev"))) {
            for (Path f : s.filter(p -> p.toString().endsWith(".json")).sorted().toList()) {
                String task = f.getParent().getParent().getFileName().toString();
                String name = f.getFileName().toString().replace(".json", "");
                double[] wh = fmt(task);
                TruthPage t = TruthPage.load(f, Path.of("/tmp/gray/" + task + "/" + name + ".pgm"), wh[0], wh[1]);
                if (!t.truth().path("hopeless").isNull()) continue;
                InkImage ink = t.page().ink();
                if (a.length > 0) dump(ink, Path.of(a[0], name + ".pgm"));
                Map<String, Double> dark = new LinkedHashMap<>();
                List<Double> longOnes = new ArrayList<>();
                for (var e : t.lines().entrySet()) {
                    Segment g = e.getValue();
                    if (g.length() < 0.8) continue;
                    double sum = 0; int n = 0;
                    Vector nrm = g.vector().unit().leftNormal();
                    double lo = 0.1, hi = 0.9;
                    for (double d = lo; d <= hi; d += 0.1 / g.length()) {
                        Point p = g.at(d);
                        double best = 0;
                        for (double o = -0.2; o <= 0.2; o += 0.1) best = Math.max(best, ink.at(p.x() + o * nrm.x(), p.y() + o * nrm.y()));
                        sum += best; n++;
                    }
                    dark.put(e.getKey(), sum / n);
                    if (g.length() > 40) longOnes.add(sum / n);
                }
                Collections.sort(longOnes);
                double d0 = longOnes.get(longOnes.size() / 2);
                StringBuilder line = new StringBuilder(String.format("%s %s d0=%.0f ", name, t.page().photograph() ? "P" : "S", d0));
                for (var e : dark.entrySet()) {
                    String k = e.getKey().replaceAll("\\d+\\.", "#.");
                    double r = e.getValue() / d0;
                    stat.computeIfAbsent(k, x -> new double[5]);
                    double[] v = stat.get(k); if (v[0] == 0) v[3] = 9; v[0]++; v[1] += r; v[2] += r * r; v[3] = Math.min(v[3], r); v[4] = Math.max(v[4], r);
                }
                System.out.println(line);
            }
        }
        stat.forEach((k, v) -> System.out.printf("%-24s n=%3.0f mean %.2f sd %.2f min %.2f max %.2f%n", k, v[0], v[1] / v[0], Math.sqrt(Math.max(0, v[2] / v[0] - v[1] / v[0] * v[1] / v[0])), v[3], v[4]));
    }

    static void dump(InkImage ink, Path out) throws Exception {
        Files.createDirectories(out.getParent());
        byte[] b = ink.bytes(); byte[] o = new byte[b.length];
        for (int i = 0; i < b.length; i++) o[i] = (byte) (255 - (b[i] & 255));
        try (var w = Files.newOutputStream(out)) { w.write(("P5\n" + ink.widthPx() + " " + ink.heightPx() + "\n255\n").getBytes()); w.write(o); }
    }
}
