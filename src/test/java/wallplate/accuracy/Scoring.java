package wallplate.accuracy;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import wallplate.accuracy.TruthSheet.KeyTruth;
import wallplate.measure.Finding;
import wallplate.measure.Finding.Absent;
import wallplate.measure.Finding.Count;
import wallplate.measure.Finding.Quantity;
import wallplate.measure.Finding.Uncertain;
import wallplate.measure.Finding.Word;
import wallplate.measure.Finding.YesNo;
import wallplate.measure.Measurement;
import wallplate.sheet.Calibration;

/**
 * Compares results with truth by the rules of the shared scoring program.
 *
 * <p>A verdict is silently wrong where an answer was given with confidence (measured or absent) and leads to another
 * verdict than the truth under the default tolerances: 1 mm; 0.5 mm for thickness, depth and width; 1 degree. Cases
 * within 0.15 mm or 0.2 degrees of the edge of the tolerance are left out.
 */
final class Scoring {

    private static final String PITCH = "roof.pitch";
    /** A sheet that the scan cut off is read as far as it goes: nothing is counted. */
    private static final String CUT_OFF = "half";

    private final Figures lengths = new Figures();
    private final Figures angles = new Figures();
    private final Map<String, Figures> byKey = new TreeMap<>();
    private final Map<String, Figures> byCondition = new TreeMap<>();
    private final List<Case> cases = new ArrayList<>();
    private int hopelessTaken;
    private int readableRefused;

    /** One key of one sheet that came out wrong. */
    record Case(SheetResult result, String key, String what, double size) {}

    void add(SheetResult result) {
        if (result.truth().hopeless().equals(Optional.of(CUT_OFF))) {
            return;
        }
        if (result.truth().hopeless().isPresent()) {
            hopelessTaken += result.isRead() && anythingMeasured(result) ? 1 : 0;
            return;
        }
        readableRefused += result.isRead() ? 0 : 1;
        result.truth().keys().forEach((key, truth) -> add(result, key, truth));
    }

    private static boolean anythingMeasured(SheetResult result) {
        return result.measured().orElseThrow().measurements().stream()
                .anyMatch(measurement -> measurement.finding().isMeasured());
    }

    private void add(SheetResult result, String key, KeyTruth truth) {
        Finding found = result.measured()
                .flatMap(sheet -> sheet.measurement(key))
                .map(Measurement::finding)
                .orElseGet(() -> Uncertain.because("not read"));
        List<Figures> figures = List.of(
                key.equals(PITCH) ? angles : lengths,
                byKey.computeIfAbsent(key, name -> new Figures()),
                byCondition.computeIfAbsent(result.truth().condition(), name -> new Figures()));
        if (truth.value().isEmpty()) {
            addAbsent(figures, found, result, key);
        } else {
            figures.forEach(Figures::drawn);
            addDrawn(figures, found, result, key, truth);
        }
    }

    private void addAbsent(List<Figures> figures, Finding found, SheetResult result, String key) {
        if (found instanceof Uncertain) {
            figures.forEach(Figures::open);
            return;
        }
        boolean right = found instanceof Absent;
        figures.forEach(figure -> figure.verdict(right));
        if (!right) {
            cases.add(new Case(result, key, "not drawn, yet measured", 100));
        }
    }

    private void addDrawn(List<Figures> figures, Finding found, SheetResult result, String key, KeyTruth truth) {
        if (found instanceof Uncertain) {
            figures.forEach(Figures::open);
            return;
        }
        if (found instanceof Absent) {
            figures.forEach(figure -> figure.verdict(false));
            cases.add(new Case(result, key, "drawn, yet called absent", 100));
            return;
        }
        figures.forEach(Figures::measured);
        Object value = truth.value().orElseThrow();
        if (found instanceof Quantity quantity && value instanceof Double) {
            addQuantity(figures, quantity.value(), result, key, truth);
            return;
        }
        boolean right = value.equals(plain(found));
        figures.forEach(figure -> figure.verdict(right));
        if (!right) {
            cases.add(new Case(result, key, "true " + value + ", measured " + plain(found), 50));
        }
    }

    private static Object plain(Finding found) {
        if (found instanceof Count count) {
            return count.number();
        }
        if (found instanceof YesNo yesNo) {
            return yesNo.yes();
        }
        return found instanceof Word word ? word.word() : found;
    }

    private void addQuantity(List<Figures> figures, double measured, SheetResult result, String key, KeyTruth truth) {
        boolean byBar = result.page().orElseThrow().calibration().source() == Calibration.Source.REFERENCE_BAR;
        double drawn = (Double) truth.value().orElseThrow();
        double compared = byBar ? truth.byBar().orElse(drawn) : drawn;
        double error = Math.abs(measured - compared);
        boolean isAngle = key.equals(PITCH);
        figures.forEach(figure -> figure.error(error));
        cases.add(new Case(result, key, String.format(Locale.ROOT, "true %.2f, measured %.2f", compared, measured), error * (isAngle ? 2 : 1)));
        Optional<Double> exact = Optional.ofNullable(result.truth().expected().get(key));
        if (exact.isEmpty()) {
            return;
        }
        double trueDeviation = deviation(drawn, exact.get());
        if (Math.abs(trueDeviation - tolerance(key)) >= (isAngle ? 0.2 : 0.15)) {
            boolean same = (trueDeviation <= tolerance(key)) == (deviation(measured, exact.get()) <= tolerance(key));
            figures.forEach(figure -> figure.verdict(same));
        }
    }

    static double tolerance(String key) {
        boolean fine = key.endsWith(".thickness") || key.endsWith(".depth") || key.endsWith(".width");
        return fine ? 0.5 : 1;
    }

    /** How far a drawn size lies outside the interval between the exact size and its nearest whole millimetre. */
    static double deviation(double value, double exact) {
        double rounded = Math.floor(exact + 0.5);
        double low = rounded == 0 ? exact : Math.min(exact, rounded);
        double high = rounded == 0 ? exact : Math.max(exact, rounded);
        return Math.max(Math.max(low - value, value - high), 0);
    }

    Figures lengths() {
        return lengths;
    }

    Figures angles() {
        return angles;
    }

    Map<String, Figures> byKey() {
        return byKey;
    }

    Map<String, Figures> byCondition() {
        return byCondition;
    }

    int hopelessTaken() {
        return hopelessTaken;
    }

    int readableRefused() {
        return readableRefused;
    }

    /** The worst cases first: wrongly absent or there, wrong answers, then the largest errors. */
    List<Case> worst(int number) {
        return cases.stream()
                .sorted(Comparator.comparingDouble((Case one) -> -one.size())
                        .thenComparing(one -> one.result().truth().name())
                        .thenComparing(Case::key))
                .limit(number)
                .toList();
    }
}
