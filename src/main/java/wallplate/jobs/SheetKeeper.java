package wallplate.jobs;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import org.springframework.stereotype.Component;
import wallplate.assessment.AssessedSheet;
import wallplate.assessment.Assessor;
import wallplate.records.ScanStore;
import wallplate.records.SheetCorrections;
import wallplate.records.Sheets;
import wallplate.report.PagePicture;
import wallplate.report.ResultFile;
import wallplate.sheet.LevelPage;
import wallplate.sheet.ScanPage;
import wallplate.task.DrawingTask;

/** Assesses a page and lays the result into the records, its pictures into the scan store first. */
@Component
class SheetKeeper {

    private final Sheets sheets;
    private final SheetCorrections corrections;
    private final ScanStore store;
    private final Assessor assessor;

    SheetKeeper(Sheets sheets, SheetCorrections corrections, ScanStore store, Assessor assessor) {
        this.sheets = sheets;
        this.corrections = corrections;
        this.store = store;
        this.assessor = assessor;
    }

    AssessedSheet assess(ScanPage page, DrawingTask task) {
        return assessor.assess(page, task);
    }

    void keep(long sheetId, AssessedSheet assessed) throws IOException {
        String result = ResultFile.write(assessed);
        if (assessed instanceof AssessedSheet.Read read) {
            String full = put(PagePicture.full(read.levelPage().ink()));
            String screen = put(PagePicture.forScreen(read.levelPage().ink()));
            sheets.keep(sheetId, read, full, screen, result);
        } else if (assessed instanceof AssessedSheet.Unreadable unreadable) {
            unreadable.code().ifPresent(code -> sheets.keepCode(sheetId, code));
            refuse(sheetId, unreadable, result);
        }
    }

    private void refuse(long sheetId, AssessedSheet.Unreadable unreadable, String result) throws IOException {
        if (unreadable.unscaled().isEmpty()) {
            sheets.refuse(sheetId, unreadable.reason(), result);
            return;
        }
        LevelPage page = unreadable.unscaled().get();
        String full = put(PagePicture.full(page.ink()));
        String screen = put(PagePicture.forScreen(page.ink()));
        corrections.refuseWithoutScale(sheetId, unreadable.reason(), result, page, full, screen);
    }

    private String put(byte[] picture) throws IOException {
        return store.put(new ByteArrayInputStream(picture)).name();
    }
}
