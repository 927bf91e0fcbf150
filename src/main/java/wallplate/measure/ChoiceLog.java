package wallplate.measure;

/** Sees every choice between readings as it is made, so that weights can be fitted to sheets of known truth. */
@FunctionalInterface
interface ChoiceLog {

    /** Looks at nothing. */
    ChoiceLog NONE = new ChoiceLog() {
        @Override
        public void made(String what, Choice<?> choice) {}
    };

    /**
     * A choice was made.
     *
     * @param what the weights' own name
     */
    void made(String what, Choice<?> choice);
}
