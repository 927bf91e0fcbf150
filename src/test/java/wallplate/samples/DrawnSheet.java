package wallplate.samples;

/**
 * A sheet that was drawn and not captured.
 *
 * @param truth the text of a truth file without what a capture adds
 */
public record DrawnSheet(String name, String taskYaml, String truth) {}
