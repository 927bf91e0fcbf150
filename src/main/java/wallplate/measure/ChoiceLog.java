package wallplate.measure;

/** Sees every choice between readings as it is made, so that weights can be fitted to sheets of known truth. */
@FunctionalInterface
interface ChoiceLog {

    /** Looks at nothing. */
    ChoiceLog NONE = choice -> {};

    /** A choice was made. */
    void made(Choice<?> choice);
}
