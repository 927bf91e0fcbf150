package wallplate.marking;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurement;

/** What was measured on a test's sheet, key by key. */
public final class Drawn {

    private final List<Measurement> measurements = new ArrayList<>();

    public static Drawn drawn() {
        return new Drawn();
    }

    public Drawn value(String key, double value) {
        return value(key, value, 0.05);
    }

    public Drawn value(String key, double value, double uncertainty) {
        measurements.add(Measurement.of(key, new Finding.Quantity(value, uncertainty)));
        return this;
    }

    public Drawn count(String key, int number) {
        measurements.add(Measurement.of(key, new Finding.Count(number)));
        return this;
    }

    public Drawn yes(String key) {
        measurements.add(Measurement.of(key, new Finding.YesNo(true)));
        return this;
    }

    public Drawn no(String key) {
        measurements.add(Measurement.of(key, new Finding.YesNo(false)));
        return this;
    }

    public Drawn word(String key, String word) {
        measurements.add(Measurement.of(key, new Finding.Word(word)));
        return this;
    }

    public Drawn absent(String key) {
        measurements.add(Measurement.of(key, new Finding.Absent()));
        return this;
    }

    public Drawn uncertain(String key, String reason) {
        measurements.add(Measurement.uncertain(key, reason));
        return this;
    }

    public MeasuredSheet sheet() {
        return new MeasuredSheet(measurements, Map.of(), Optional.empty());
    }
}
