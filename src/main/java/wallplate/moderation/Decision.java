package wallplate.moderation;

/** What is decided about the marks of a class set after its sample was marked a second time. */
public sealed interface Decision {

    /** The marks stand. */
    record Accept() implements Decision {
        @Override
        public String word() {
            return "accept";
        }
    }

    /** The whole set is to be marked again. */
    record MarkAgain() implements Decision {
        @Override
        public String word() {
            return "mark-again";
        }
    }

    /**
     * One criterion is marked up or down by the same number on every sheet whose total lies within limits.
     *
     * @param by marks added; below 0 they are taken off
     * @param fromTotal the lowest total of a sheet that is adjusted
     * @param toTotal the highest
     */
    record Adjust(String criterion, double by, double fromTotal, double toTotal) implements Decision {
        public Adjust {
            if (by == 0 || !Double.isFinite(by)) {
                throw new IllegalArgumentException("an adjustment by " + by + "; right would be a number that is not 0");
            }
            if (!(fromTotal <= toTotal)) {
                throw new IllegalArgumentException(
                        "totals from " + fromTotal + " to " + toTotal + "; right would be from low to high");
            }
        }

        @Override
        public String word() {
            return "adjust";
        }
    }

    /** The word in the database and in forms. */
    String word();
}
