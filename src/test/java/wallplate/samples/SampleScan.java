package wallplate.samples;

/**
 * A drawn and captured sheet as files.
 *
 * @param name the sheet's name, the file's without its ending
 * @param task the task's id
 * @param content the scan file's bytes
 * @param truth the truth file's text
 */
@SuppressWarnings("ArrayRecordComponent")
public record SampleScan(String name, String task, String taskYaml, String file, byte[] content, String truth) {}
