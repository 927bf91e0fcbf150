package wallplate.handouts;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import org.springframework.stereotype.Service;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.report.ClassReports;

/** Makes the feedback of a whole set as one file. */
@Service
public class FeedbackFiles {

    private final PreparedFiles files;
    private final ClassSets classSets;
    private final Sheets sheets;
    private final SheetDocuments documents;
    private final Preparing preparing;

    FeedbackFiles(
            PreparedFiles files, ClassSets classSets, Sheets sheets, SheetDocuments documents, Preparing preparing) {
        this.files = files;
        this.classSets = classSets;
        this.sheets = sheets;
        this.documents = documents;
        this.preparing = preparing;
    }

    /** Tells apart two states of a set in which its feedback is not the same. */
    public String stateOf(ClassSet classSet) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            digest.update(classSet.toString().getBytes(StandardCharsets.UTF_8));
            sheets.of(classSet.id()).forEach(sheet -> digest.update(sheet.toString().getBytes(StandardCharsets.UTF_8)));
            digest.update(files.lastChanges(classSet.id()).getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("every Java platform has SHA-256", missing);
        }
    }

    /**
     * Makes a file that was asked for.
     *
     * @throws IOException where the store did not give or take what was asked
     */
    public void make(PreparedFile wanted) throws IOException {
        ClassSet classSet = classSets.find(wanted.subject()).orElseThrow();
        // Before the first sheet is read: what changes meanwhile makes the file one of an earlier state.
        preparing.make(wanted, stateOf(classSet), out -> write(wanted, classSet, out));
    }

    private void write(PreparedFile wanted, ClassSet classSet, OutputStream out) throws IOException {
        Locale language = wanted.locale();
        List<SheetEntry> finished =
                sheets.of(classSet.id()).stream().filter(sheet -> sheet.state().isFinished()).toList();
        ClassReports.Sheets pages = visitor -> {
            int done = 0;
            for (SheetEntry sheet : finished) {
                files.progress(wanted.id(), done, finished.size());
                visitor.visit(new ClassReports.NamedSheet(
                        sheet.label(), documents.withPicture(classSet, sheet, language)));
                done++;
            }
        };
        ClassReports reports = new ClassReports(language);
        switch (wanted.kind()) {
            case PDF -> reports.writePdf(pages, out);
            case ZIP -> reports.writeZip(pages, out);
            case EVERYTHING -> throw new IllegalArgumentException("a file about a learner is not the feedback of a set");
        }
    }
}
