package wallplate.web;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.IdentityHashMap;
import java.util.Map;
import org.springframework.boot.test.context.TestComponent;
import wallplate.assessment.AssessedSheet;
import wallplate.records.ClassSet;
import wallplate.records.ScanFileEntry;
import wallplate.records.ScanFiles;
import wallplate.records.ScanStore;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.report.PagePicture;
import wallplate.report.ResultFile;

/** Sheets in a set as the program keeps them, without the queue: handed in, or read already. */
@TestComponent
public class KeptSheets {

    private final ScanFiles files;
    private final Sheets sheets;
    private final ScanStore store;

    KeptSheets(ScanFiles files, Sheets sheets, ScanStore store) {
        this.files = files;
        this.sheets = sheets;
        this.store = store;
    }

    /** The names in the store of a level page's pictures. */
    private record Pictures(String full, String screen) {}

    private final Map<AssessedSheet.Read, Pictures> pictures = new IdentityHashMap<>();

    /** A file that is there but has not been read; what is in it is no scan. */
    public ScanFileEntry received(ClassSet classSet, String name) {
        return received(classSet, name, (classSet.id() + name).getBytes(StandardCharsets.UTF_8));
    }

    public ScanFileEntry received(ClassSet classSet, String name, byte[] content) {
        ScanStore.Kept kept = put(content);
        return files.add(classSet.id(), name, kept.name(), kept.sizeBytes()).orElseThrow();
    }

    /** A sheet that waits to be read, alone in its file. */
    public SheetEntry waiting(ClassSet classSet, String name) {
        return sheets.page(received(classSet, name).id(), 1);
    }

    /** A sheet that was read, alone in its file; its pictures are in the store. */
    public SheetEntry read(ClassSet classSet, String name, AssessedSheet.Read found) {
        ScanFileEntry file = received(classSet, name);
        SheetEntry sheet = sheets.page(file.id(), 1);
        keep(sheet, found);
        files.begin(file.id());
        files.finish(file.id());
        return sheets.find(sheet.id()).orElseThrow();
    }

    /** Keeps what was found on a sheet; one that is kept again and again is drawn once. */
    public void keep(SheetEntry sheet, AssessedSheet.Read found) {
        Pictures of = pictures.computeIfAbsent(found, one -> new Pictures(
                put(PagePicture.full(one.levelPage().ink())).name(),
                put(PagePicture.forScreen(one.levelPage().ink())).name()));
        sheets.keep(sheet.id(), found, of.full(), of.screen(), ResultFile.write(found));
    }

    private ScanStore.Kept put(byte[] content) {
        try {
            return store.put(new ByteArrayInputStream(content));
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }
}
