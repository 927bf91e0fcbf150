package wallplate.sheet.pdf;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.graphics.form.PDTransparencyGroup;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.rendering.PageDrawer;
import org.apache.pdfbox.rendering.PageDrawerParameters;

/** Renders pages, giving up between two drawing operations where a page exceeds its limits. */
final class LimitedRenderer extends PDFRenderer {

    private final PageLimits limits;
    private final long pagePixels;

    /**
     * @param pagePixels of the picture that will be made
     */
    LimitedRenderer(PDDocument document, PageLimits limits, long pagePixels) {
        super(document);
        this.limits = limits;
        this.pagePixels = pagePixels;
    }

    @Override
    protected PageDrawer createPageDrawer(PageDrawerParameters parameters) throws IOException {
        return new LimitedDrawer(parameters, limits, pagePixels);
    }

    private static final class LimitedDrawer extends PageDrawer {

        private final PageLimits limits;
        private final long pagePixels;
        private int groups;

        LimitedDrawer(PageDrawerParameters parameters, PageLimits limits, long pagePixels) throws IOException {
            super(parameters);
            this.limits = limits;
            this.pagePixels = pagePixels;
        }

        /** Each group in a group is painted on a picture of its own, at worst as large as the page. */
        @Override
        public void showTransparencyGroup(PDTransparencyGroup group) throws IOException {
            groups++;
            if (groups * pagePixels > limits.mostPixels()) {
                throw new PageLimits.Exceeded("the page's groups are nested too deeply");
            }
            super.showTransparencyGroup(group);
            groups--;
        }

        @Override
        protected void processOperator(Operator operator, List<COSBase> operands) throws IOException {
            limits.checkTime();
            super.processOperator(operator, operands);
        }

        @Override
        public void drawImage(PDImage image) throws IOException {
            limits.checkImage(image);
            super.drawImage(image);
        }

        /** Errors inside an operation are passed over by the library; a limit is not. */
        @Override
        protected void operatorException(
                Operator operator, List<COSBase> operands, IOException exception) throws IOException {
            if (exception instanceof PageLimits.Exceeded) {
                throw exception;
            }
            super.operatorException(operator, operands, exception);
        }
    }
}
