package wallplate.web.sets;

/**
 * What the page's script hears about a file that it sends in parts.
 *
 * @param received bytes that are here
 * @param state {@code more}, {@code taken}, {@code same} or {@code wrong}
 * @param said why it is wrong, in a sentence; empty otherwise
 */
record PartAnswer(long received, String state, String said) {

    static PartAnswer more(long received) {
        return new PartAnswer(received, "more", "");
    }

    static PartAnswer wrong(String sentence) {
        return new PartAnswer(0, "wrong", sentence);
    }
}
