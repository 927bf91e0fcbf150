package wallplate.report.pdf;

import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Locale;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import wallplate.assessment.AssessedSheet;
import wallplate.report.FeedbackWords;

/** A PDF that feedback reports are put into, one after the other. */
public final class FeedbackDocument implements Closeable {

    private final Locale language;
    private final PDDocument document = new PDDocument();
    private final ReportFonts fonts;
    private final Tags tags = new Tags(document);

    public FeedbackDocument(Locale language) throws IOException {
        this.language = language;
        this.fonts = new ReportFonts(document);
    }

    /**
     * Adds the pages of a sheet's report and returns how many they are.
     *
     * @param name whose they are, as it stands at their head: a learner's, or the scan's where nobody is known
     */
    public int add(String name, AssessedSheet sheet) throws IOException {
        FeedbackWords words = FeedbackWords.in(language, sheet.expected());
        if (document.getNumberOfPages() == 0) {
            describe(sheet, words);
        }
        if (sheet instanceof AssessedSheet.Unreadable unreadable) {
            try (Canvas canvas = newPage()) {
                new UnreadablePage(words, name, unreadable).draw(canvas);
            }
            return 1;
        }
        AssessedSheet.Read read = (AssessedSheet.Read) sheet;
        try (Canvas canvas = newPage()) {
            new MarksPage(document, words, name, read).draw(canvas);
        }
        try (Canvas canvas = newPage()) {
            new NextTimePage(document, words, read).draw(canvas);
        }
        return 2;
    }

    /** How many pages there are so far. */
    public int pages() {
        return document.getNumberOfPages();
    }

    /** Puts a name into the document's outline that leads to a page, counted from 1. */
    public void bookmark(String name, int page) {
        PDOutlineItem item = new PDOutlineItem();
        item.setTitle(name);
        item.setDestination(document.getPage(page - 1));
        PDDocumentOutline outline = document.getDocumentCatalog().getDocumentOutline();
        if (outline == null) {
            outline = new PDDocumentOutline();
            document.getDocumentCatalog().setDocumentOutline(outline);
        }
        outline.addLast(item);
    }

    private Canvas newPage() throws IOException {
        PDPage page = new PDPage(PDRectangle.A4);
        document.addPage(page);
        return new Canvas(document, page, fonts, tags);
    }

    private void describe(AssessedSheet sheet, FeedbackWords words) {
        PDDocumentInformation facts = new PDDocumentInformation();
        facts.setTitle(
                words.text("document.title") + ": " + sheet.expected().task().title());
        facts.setCreator("Wallplate");
        document.setDocumentInformation(facts);
        PDViewerPreferences preferences = new PDViewerPreferences(new COSDictionary());
        preferences.setDisplayDocTitle(true);
        document.getDocumentCatalog().setViewerPreferences(preferences);
        document.getDocumentCatalog().setLanguage(words.phrases().language().toLanguageTag());
    }

    /** Writes everything that was added; the same sheets in the same order give the same bytes. */
    public void write(OutputStream out) throws IOException {
        tags.finish();
        document.setDocumentId(0L);
        document.save(out);
    }

    @Override
    public void close() throws IOException {
        document.close();
    }
}
