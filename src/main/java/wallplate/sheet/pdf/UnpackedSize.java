package wallplate.sheet.pdf;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.filter.FilterFactory;

/**
 * How large a stream becomes when its packing is undone, found out without keeping what comes out.
 *
 * <p>Three packings of ISO 32000-1, section 7.4, make streams grow without bound: deflate, LZW and run lengths. What an
 * image format makes of its bytes is {@link EncodedImageSize}'s matter.
 */
final class UnpackedSize {

    private static final Set<COSName> DEFLATE = Set.of(COSName.FLATE_DECODE, COSName.FLATE_DECODE_ABBREVIATION);
    private static final Set<COSName> OTHERS_THAT_GROW = Set.of(
            COSName.LZW_DECODE,
            COSName.LZW_DECODE_ABBREVIATION,
            COSName.RUN_LENGTH_DECODE,
            COSName.RUN_LENGTH_DECODE_ABBREVIATION);
    /** A row of an image or a table, as the undoing of differences keeps it in memory; no scan's is as long. */
    private static final long MOST_ROW_BYTES = 4_000_000;

    private static final int BUFFER = 65_536;

    private final COSStream stream;
    private final List<COSName> packings;

    UnpackedSize(COSStream stream) {
        this.stream = stream;
        this.packings = names(stream.getDictionaryObject(COSName.FILTER, COSName.F));
    }

    /** Whether the stream would become larger than so many bytes; damaged content is as large as it can be read. */
    boolean exceeds(long most) throws IOException {
        long growing = packings.stream().filter(UnpackedSize::grows).count();
        if (growing == 0) {
            return false;
        }
        if (growing > 1) {
            throw new PageLimits.Exceeded("a stream is packed more than once");
        }
        checkRows();
        return DEFLATE.contains(packings.get(0)) ? deflatedExceeds(most) : chainExceeds(most);
    }

    private static boolean grows(COSName packing) {
        return DEFLATE.contains(packing) || OTHERS_THAT_GROW.contains(packing);
    }

    private static List<COSName> names(COSBase filter) {
        List<COSName> names = new ArrayList<>();
        if (filter instanceof COSName name) {
            names.add(name);
        } else if (filter instanceof COSArray array) {
            for (int i = 0; i < array.size(); i++) {
                if (array.getObject(i) instanceof COSName name) {
                    names.add(name);
                }
            }
        }
        return names;
    }

    private void checkRows() throws PageLimits.Exceeded {
        COSBase parameters = stream.getDictionaryObject(COSName.DECODE_PARMS, COSName.DP);
        if (parameters instanceof COSDictionary dictionary) {
            checkRow(dictionary);
        } else if (parameters instanceof COSArray array) {
            for (int i = 0; i < array.size(); i++) {
                if (array.getObject(i) instanceof COSDictionary dictionary) {
                    checkRow(dictionary);
                }
            }
        }
    }

    private static void checkRow(COSDictionary parameters) throws PageLimits.Exceeded {
        double columns = parameters.getInt(COSName.COLUMNS, 1);
        double colours = parameters.getInt(COSName.COLORS, 1);
        double bits = parameters.getInt(COSName.BITS_PER_COMPONENT, 8);
        if (columns * colours * bits / 8 > MOST_ROW_BYTES) {
            throw new PageLimits.Exceeded("a stream states rows that are too long");
        }
    }

    private boolean deflatedExceeds(long most) throws IOException {
        Inflater inflater = new Inflater();
        byte[] packed = new byte[BUFFER];
        byte[] unpacked = new byte[BUFFER];
        try (InputStream raw = stream.createRawInputStream()) {
            long total = 0;
            while (!inflater.finished() && total <= most) {
                if (inflater.needsInput()) {
                    int read = raw.read(packed);
                    if (read <= 0) {
                        break;
                    }
                    inflater.setInput(packed, 0, read);
                }
                int count = inflater.inflate(unpacked);
                if (count == 0 && !inflater.needsInput()) {
                    break;
                }
                total += count;
            }
            return total > most;
        } catch (DataFormatException e) {
            return false;
        } finally {
            inflater.end();
        }
    }

    /** Undoes the packings in turn up to the one that grows; none before it makes more bytes than it is given. */
    private boolean chainExceeds(long most) throws IOException {
        InputStream packed = stream.createRawInputStream();
        try {
            for (int i = 0; i < packings.size(); i++) {
                boolean last = grows(packings.get(i));
                Counter counter = new Counter(most, !last);
                FilterFactory.INSTANCE.getFilter(packings.get(i)).decode(packed, counter, stream, i);
                if (last) {
                    return false;
                }
                packed.close();
                packed = new ByteArrayInputStream(counter.kept.toByteArray());
            }
            return false;
        } catch (TooManyBytes e) {
            return true;
        } catch (IOException e) {
            // Damage, which whoever reads the stream will meet in the same place.
            return false;
        } finally {
            packed.close();
        }
    }

    private static final class TooManyBytes extends RuntimeException {

        private static final long serialVersionUID = 1L;
    }

    /** Counts what is written and stops whoever writes too much. */
    private static final class Counter extends OutputStream {

        private final long most;
        private final boolean keeps;
        private final ByteArrayOutputStream kept = new ByteArrayOutputStream();
        private long count;

        Counter(long most, boolean keeps) {
            this.most = most;
            this.keeps = keeps;
        }

        @Override
        public void write(int value) {
            write(new byte[] {(byte) value}, 0, 1);
        }

        @Override
        public void write(byte[] bytes, int from, int length) {
            count += length;
            if (count > most) {
                throw new TooManyBytes();
            }
            if (keeps) {
                kept.write(bytes, from, length);
            }
        }
    }
}
