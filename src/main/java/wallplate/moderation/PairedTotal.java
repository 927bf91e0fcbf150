package wallplate.moderation;

/** The two totals that one sheet got. */
public record PairedTotal(int place, long sheetId, double available, double first, double second) {

    public double difference() {
        return second - first;
    }

    public double mean() {
        return (first + second) / 2;
    }
}
