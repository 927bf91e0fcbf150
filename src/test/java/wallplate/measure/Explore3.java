package wallplate.measure;

import java.nio.file.*;
import java.util.*;
import wallplate.geometry.*;
import wallplate.geometry.Vector;
import wallplate.sheet.*;
import wallplate.solver.*;
import wallplate.stroke.*;
import wallplate.task.*;

final class Explore3 {
    static ExpectedDrawing expected(Path truthFile) throws Exception {
        TaskReading reading = TaskFile.read(Files.readString(truthFile.getParent().getParent().resolve("task.yml")));
        return Solver.solve(((TaskReading.Accepted) reading).task());
    }

    public static void main(String[] a) throws Exception {
        Map<String, List<Double>> errs = new TreeMap<>();
        try (var s = Files.walk(Path.of("../shared/scans/dev"))) {
            for (Path f : s.filter(p -> p.toString().endsWith(".json")).sorted().toList()) {
                String task = f.getParent().getParent().getFileName().toString();
                String name = f.getFileName().toString().replace(".json", "");
                if (a.length > 0 && !name.endsWith(a[0])) continue;
                double[] wh = Explore.fmt(task);
                TruthPage t = TruthPage.load(f, Path.of("/tmp/gray/" + task + "/" + name + ".pgm"), wh[0], wh[1]);
                if (!t.truth().path("hopeless").isNull()) continue;
                long t0 = System.nanoTime();
                var view = DrawingView.of(t.page().ink()).orElseThrow();
                long t1 = System.nanoTime();
                RoofLines r = RoofLines.of(view, new Expectation(expected(f)));
                long t2 = System.nanoTime();
                StringBuilder b = new StringBuilder();
                var truth = t.lines();
                for (var e : List.of(Map.entry("break", r.breakLine()), Map.entry("rafter.bottom", r.rafterBottom()), Map.entry("rafter.top", r.rafterTop()), Map.entry("covering.bottom", r.coveringBottom()), Map.entry("covering.top", r.coveringTop()), Map.entry("tie-beam.top", r.tieBeamTop()), Map.entry("tie-beam.bottom", r.tieBeamBottom()), Map.entry("ceiling.top", r.ceilingTop()), Map.entry("ceiling.bottom", r.ceilingBottom()))) {
                    Segment g = truth.get(e.getKey());
                    if (g == null && e.getValue().isEmpty()) continue;
                    if (g == null) { b.append(" GHOST " + e.getKey()); continue; }
                    if (e.getValue().isEmpty()) { b.append(" LOST " + e.getKey()); continue; }
                    Segment found = view.onPage(e.getValue().get().segment());
                    double off = found.line().distanceTo(g.midpoint());
                    double ang = Angles.inclination(found.inclinationDegrees() - g.inclinationDegrees());
                    errs.computeIfAbsent(e.getKey(), k -> new ArrayList<>()).add(Math.abs(off));
                    errs.computeIfAbsent(e.getKey() + "~deg", k -> new ArrayList<>()).add(Math.abs(ang));
                    if (Math.abs(off) > 0.15) b.append(String.format(" %s off %.2f", e.getKey(), off));
                    if (Math.abs(ang) > 0.1) b.append(String.format(" %s ANG %.2f", e.getKey(), ang));
                }
                System.out.printf("%s d0=%.0f view %d ms lines %d ms conf %.2f %s%n", name, view.outlineInk(), (t1 - t0) / 1000000, (t2 - t1) / 1000000, r.confusion(), b);
            }
        }
        errs.forEach((k, v) -> { Collections.sort(v); System.out.printf("%-24s n=%d med %.3f p95 %.3f%n", k, v.size(), v.get(v.size() / 2), v.get((int) (v.size() * 0.95))); });
    }
}
