package wallplate.records;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;

/**
 * How whole files of an installation lie at rest: encrypted by the key of the scans where there is one, else as they are.
 */
public interface AtRest {

    /**
     * What is written to the stream lies in the other as it is kept.
     *
     * @param name of the file's kind; it must be the same when it is read
     */
    OutputStream keeping(String name, OutputStream out) throws IOException;

    /**
     * What was kept so, as it was written; a file that was not encrypted is given as it is.
     *
     * @throws IOException where it was encrypted and there is no key or another one, or it was changed or cut off
     */
    InputStream kept(String name, InputStream in) throws IOException;
}
