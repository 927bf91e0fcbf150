package wallplate.sheet.pdf;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.rendering.PageDrawer;
import org.apache.pdfbox.rendering.PageDrawerParameters;

/** Renders pages, giving up between two drawing operations where a page exceeds its limits. */
final class LimitedRenderer extends PDFRenderer {

    private final PageLimits limits;

    LimitedRenderer(PDDocument document, PageLimits limits) {
        super(document);
        this.limits = limits;
    }

    @Override
    protected PageDrawer createPageDrawer(PageDrawerParameters parameters) throws IOException {
        return new LimitedDrawer(parameters, limits);
    }

    private static final class LimitedDrawer extends PageDrawer {

        private final PageLimits limits;

        LimitedDrawer(PageDrawerParameters parameters, PageLimits limits) throws IOException {
            super(parameters);
            this.limits = limits;
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
