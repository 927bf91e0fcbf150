package wallplate.drafting.paper;

/** Tells how long a line of text is when lettered. */
public interface TextMeasure {

    double widthMm(String text, Typeface typeface, double heightMm);

    default double widthMm(Ink.Lettering lettering) {
        return widthMm(lettering.text(), lettering.typeface(), lettering.heightMm());
    }
}
