package wallplate.sheet.pdf;

import java.io.IOException;
import java.util.Optional;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSObjectKey;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.io.IOUtils;
import org.apache.pdfbox.io.RandomAccessRead;
import org.apache.pdfbox.pdfparser.PDFParser;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * Opens PDF files, and looks at each stream before anybody unpacks it: tables, fonts, colour profiles and objects packed
 * into streams are held in memory whole.
 *
 * <p>The library passes over errors in single objects and goes on with the rest of the file. Whether one of them exceeded
 * a limit is therefore kept; no stream is read after it until that was asked.
 */
final class LimitedParser extends PDFParser {

    private final PageLimits opening;
    private Optional<PDDocument> parsed = Optional.empty();
    private boolean exceeded;

    private LimitedParser(RandomAccessRead content, PageLimits opening) throws IOException {
        // Decrypted streams go to a file of the system's temporary folder, not to memory.
        super(content, "", null, null, IOUtils.createTempFileOnlyStreamCache());
        this.opening = opening;
    }

    /**
     * An open file; its objects are read when they are asked for, under the same limits.
     *
     * @param opening bounds the time until the file is open
     * @throws PageLimits.Exceeded where the file asks for more
     */
    static LimitedParser open(RandomAccessRead content, PageLimits opening) throws IOException {
        LimitedParser parser = new LimitedParser(content, opening);
        try {
            PDDocument document = parser.parse();
            // Pictures of pages that were shown would stay in memory for as long as there is room.
            document.setResourceCache(null);
            parser.parsed = Optional.of(document);
        } catch (IOException | RuntimeException e) {
            content.close();
            if (parser.exceeded) {
                throw new PageLimits.Exceeded("a stream of the file asks for too much");
            }
            throw e;
        }
        if (parser.exceeded) {
            parser.close();
            throw new PageLimits.Exceeded("a stream of the file asks for too much");
        }
        return parser;
    }

    PDDocument opened() {
        return parsed.orElseThrow();
    }

    void close() throws IOException {
        opened().close();
    }

    /** Whether something since the last time this was asked was left out because it asks for too much. */
    boolean hasLeftOut() {
        boolean left = exceeded;
        exceeded = false;
        return left;
    }

    @Override
    protected COSStream parseCOSStream(COSDictionary dictionary) throws IOException {
        COSStream stream = super.parseCOSStream(dictionary);
        check(stream);
        return stream;
    }

    /** An encrypted stream can be looked into only after it was decrypted. */
    @Override
    protected synchronized COSBase parseObjectDynamically(COSObjectKey key, boolean required) throws IOException {
        COSBase object = super.parseObjectDynamically(key, required);
        if (securityHandler != null && object instanceof COSStream stream) {
            check(stream);
        }
        return object;
    }

    private void check(COSStream stream) throws IOException {
        try {
            if (exceeded) {
                throw new PageLimits.Exceeded("the file asks for too much");
            }
            if (parsed.isEmpty()) {
                opening.checkTime();
            }
            opening.checkStream(stream);
        } catch (PageLimits.Exceeded e) {
            exceeded = true;
            throw e;
        }
    }
}
