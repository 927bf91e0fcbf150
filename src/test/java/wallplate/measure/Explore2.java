package wallplate.measure;

import java.nio.file.*;
import java.util.*;
import wallplate.geometry.Vector;
import wallplate.geometry.*;
import wallplate.sheet.*;
import wallplate.stroke.*;

final class Explore2 {
    public static void main(String[] a) throws Exception {
        try (var s = Files.walk(Path.of("../shared/scans/dev"))) {
            for (Path f : s.filter(p -> p.toString().endsWith(".json")).sorted().toList()) {
                String task = f.getParent().getParent().getFileName().toString();
                String name = f.getFileName().toString().replace(".json", "");
                if (a.length > 0 && !name.endsWith(a[0])) continue;
                double[] wh = Explore.fmt(task);
                TruthPage t = TruthPage.load(f, Path.of("/tmp/gray/" + task + "/" + name + ".pgm"), wh[0], wh[1]);
                if (!t.truth().path("hopeless").isNull()) continue;
                InkImage ink = t.page().ink();
                long t0 = System.nanoTime();
                var dirs = SlopeDirection.candidates(ink, 7, 65);
                long t1 = System.nanoTime();
                StrokeFinder finder = new StrokeFinder(StrokeSettings.usual());
                var slope = finder.find(ink, dirs.get(0));
                long t2 = System.nanoTime();
                var level = finder.find(ink, 0);
                var up = finder.find(ink, 90);
                long t3 = System.nanoTime();
                double pitch = t.truth().path("truth").path("roof.pitch").path("value").asDouble();
                System.out.printf("%s truth %.2f %s cand %s  times %d %d %d ms  n %d %d %d%n", name, pitch, t.truth().path("truth").path("drawing.eaves").path("value").asString(), dirs.stream().map(d -> String.format("%.2f", d)).toList(), (t1 - t0) / 1000000, (t2 - t1) / 1000000, (t3 - t2) / 1000000, slope.size(), level.size(), up.size());
                if (a.length > 0) {
                    for (var L : List.of(slope, level, up)) { System.out.println("---"); L.stream().limit(40).forEach(k -> System.out.printf("len %.1f  (%.1f,%.1f)-(%.1f,%.1f) ang %.2f dark %.0f med %.0f cov %.2f res %.3f%n", k.length(), k.centreLine().start().x(), k.centreLine().start().y(), k.centreLine().end().x(), k.centreLine().end().y(), k.centreLine().inclinationDegrees(), k.darkness(), k.inkAlong().median(), k.coverage(), k.residualMm())); }
                }
            }
        }
    }
}
