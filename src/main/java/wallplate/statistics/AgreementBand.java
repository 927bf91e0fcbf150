package wallplate.statistics;

/** A word for how strong an agreement is. The bounds are habit, not law: Landis and Koch call their own arbitrary. */
public enum AgreementBand {
    NONE("no better than chance"),
    SLIGHT("slight"),
    FAIR("fair"),
    MODERATE("moderate"),
    SUBSTANTIAL("substantial"),
    ALMOST_PERFECT("almost perfect"),
    POOR("poor"),
    GOOD("good"),
    EXCELLENT("excellent");

    private final String word;

    AgreementBand(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }

    /** For a kappa: Landis and Koch (1977), "The measurement of observer agreement", Biometrics 33, 159-174; bounds from memory. */
    public static AgreementBand ofKappa(double kappa) {
        if (kappa <= 0) {
            return NONE;
        }
        return kappa <= 0.2 ? SLIGHT : kappa <= 0.4 ? FAIR : kappa <= 0.6 ? MODERATE : kappa <= 0.8 ? SUBSTANTIAL : ALMOST_PERFECT;
    }

    /** For an intraclass correlation: Koo and Li (2016), Journal of Chiropractic Medicine 15, 155-163; bounds from memory. */
    public static AgreementBand ofCorrelation(double correlation) {
        return correlation < 0.5 ? POOR : correlation < 0.75 ? MODERATE : correlation < 0.9 ? GOOD : EXCELLENT;
    }
}
