package wallplate.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wallplate.geometry.Line;
import wallplate.geometry.PlaneMap;
import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.codes.CodeReader;
import wallplate.sheet.opencv.InkFlattening;
import wallplate.sheet.opencv.PageWarp;
import wallplate.sheet.opencv.PunchedHoles;
import wallplate.sheet.page.Disc;
import wallplate.sheet.page.GreyPage;
import wallplate.sheet.page.PageMap;
import wallplate.sheet.page.PaperMask;
import wallplate.sheet.page.RoughPage;
import wallplate.sheet.page.RoughPage.Kind;
import wallplate.sheet.page.RoughPage.Scale;
import wallplate.task.SheetFormat;

/**
 * The ink of a page, taken from its picture: once roughly, to understand it, and once level. Holes and what is printed on
 * the project's own sheets are left out.
 */
final class PageInk {

    private static final double ROUGH_PIXELS_PER_MM = 4;
    private static final double LEVEL_PIXELS_PER_MM = 10;
    private static final double CODE_PIXELS_PER_MM = 12;
    private static final double PRINT_RIM = 1;
    /** What lies outside the picture is as dark as a scanner's surround and taken for that. */
    private static final int OUTSIDE = 0;

    private static final double EDGE_INSET = 0.8;

    private final Picture picture;
    private final SheetFormat format;
    private final RoughPage rough;
    private final List<Disc> discs;
    private final InkImage roughInk;

    PageInk(Picture picture, SheetFormat format, RoughPage rough) {
        this.picture = picture;
        this.format = format;
        this.rough = rough;
        GreyPage grey =
                PageWarp.warp(picture, rough.map(), rough.widthMm(), rough.heightMm(), ROUGH_PIXELS_PER_MM, OUTSIDE);
        this.discs = discs(grey);
        this.roughInk = InkFlattening.flatten(grey, mask(rough.paper(), discs), isPhotograph());
    }

    /** The ink on the page as it was put on the scanner or seen by the camera. */
    InkImage rough() {
        return roughInk;
    }

    /**
     * The ink on the level page.
     *
     * @param toRough from level millimetres to rough ones
     */
    InkImage level(PageMap toRough, double widthMm, double heightMm) {
        GreyPage grey =
                PageWarp.warp(picture, rough.map().after(toRough), widthMm, heightMm, LEVEL_PIXELS_PER_MM, OUTSIDE);
        PlaneMap fromRough = toRough.inverse();
        List<Line> edges = rough.paper().stream()
                .map(edge -> fromRough.apply(edge.between(0, 100)).line())
                .toList();
        List<Disc> levelDiscs = discs.stream().map(disc -> disc.on(fromRough)).toList();
        return InkFlattening.flatten(grey, mask(edges, levelDiscs), isPhotograph());
    }

    /** What the printed code says, which stands at a known place beside the marks. */
    Optional<SheetCode> code() {
        if (rough.scale() != Scale.MARKS) {
            return Optional.empty();
        }
        PrintedMarks.CodePlace place = PrintedMarks.of(format).code();
        double side = place.size() + 2 * PrintedMarks.CODE_QUIET_ZONE;
        PageMap corner = PageMap.affine(
                1, 0, place.centre().x() - side / 2, 0, 1, place.centre().y() - side / 2);
        GreyPage cutOut = PageWarp.warp(picture, rough.map().after(corner), side, side, CODE_PIXELS_PER_MM, 255);
        return CodeReader.read(cutOut);
    }

    private boolean isPhotograph() {
        return rough.kind() == Kind.PHOTOGRAPH;
    }

    private PaperMask mask(List<Line> edges, List<Disc> covered) {
        return new PaperMask(edges, EDGE_INSET, covered, !isPhotograph());
    }

    /** Holes, and what is printed on the project's own sheets, on the rough page. */
    private List<Disc> discs(GreyPage grey) {
        List<Disc> discs = new ArrayList<>(PunchedHoles.find(grey));
        if (rough.scale() == Scale.MARKS) {
            PrintedMarks printed = PrintedMarks.of(format);
            double markRadius = PrintedMarks.MARK_SIZE / Math.sqrt(2) + PRINT_RIM;
            double codeRadius = printed.code().size() / Math.sqrt(2) + PRINT_RIM;
            printed.marks().forEach(mark -> discs.add(new Disc(mark.centre(), markRadius)));
            discs.add(new Disc(printed.code().centre(), codeRadius));
        }
        return discs;
    }
}
