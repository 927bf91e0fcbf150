package wallplate.sheet.opencv;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.opencv.core.CvException;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.Range;
import org.opencv.imgcodecs.Imgcodecs;
import wallplate.sheet.ScanPage.Picture;

/**
 * Decodes pictures to grey. Whoever calls it has told the format by its first bytes and checked the size in the header:
 * only PNG, JPEG, BMP, WebP and TIFF come here.
 */
public final class PictureDecoder {

    static {
        OpenCv.load();
    }

    private PictureDecoder() {}

    /** The picture, turned as its EXIF note asks; empty where the bytes are damaged. */
    public static Optional<Picture> decode(byte[] content, double dpiX, double dpiY) {
        return decode(content, Imgcodecs.IMREAD_GRAYSCALE, dpiX, dpiY);
    }

    /** The picture as its rows stand in the file, whatever its EXIF note says; empty where the bytes are damaged. */
    public static Optional<Picture> decodeUnturned(byte[] content, double dpiX, double dpiY) {
        return decode(content, Imgcodecs.IMREAD_GRAYSCALE | Imgcodecs.IMREAD_IGNORE_ORIENTATION, dpiX, dpiY);
    }

    private static Optional<Picture> decode(byte[] content, int flags, double dpiX, double dpiY) {
        try (MatScope scope = new MatScope()) {
            MatOfByte encoded = scope.keep(new MatOfByte(content));
            return picture(scope.keep(Imgcodecs.imdecode(encoded, flags)), dpiX, dpiY);
        } catch (CvException e) {
            return Optional.empty();
        }
    }

    /** One page of a TIFF file, counted from 0, without decoding the others; empty where it is damaged. */
    public static Optional<Picture> decodeTiffPage(byte[] content, int page, double dpiX, double dpiY) {
        try (MatScope scope = new MatScope()) {
            MatOfByte encoded = scope.keep(new MatOfByte(content));
            List<Mat> pages = new ArrayList<>();
            Imgcodecs.imdecodemulti(encoded, Imgcodecs.IMREAD_GRAYSCALE, pages, new Range(page, page + 1));
            pages.forEach(scope::keep);
            return pages.isEmpty() ? Optional.empty() : picture(pages.get(0), dpiX, dpiY);
        } catch (CvException e) {
            return Optional.empty();
        }
    }

    private static Optional<Picture> picture(Mat grey, double dpiX, double dpiY) {
        if (grey.empty() || grey.type() != CvType.CV_8UC1) {
            return Optional.empty();
        }
        byte[] bytes = new byte[grey.rows() * grey.cols()];
        grey.get(0, 0, bytes);
        return Optional.of(new Picture(grey.cols(), grey.rows(), bytes, dpiX, dpiY));
    }
}
