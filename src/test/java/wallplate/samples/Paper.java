package wallplate.samples;

/** A sheet of drawing paper as it lies before the learner, in millimetres. */
record Paper(String size, boolean landscape) {

    double width() {
        return landscape ? longSide() : shortSide();
    }

    double height() {
        return landscape ? shortSide() : longSide();
    }

    private double longSide() {
        return size.equals("A3") ? 420 : 297;
    }

    private double shortSide() {
        return size.equals("A3") ? 297 : 210;
    }
}
