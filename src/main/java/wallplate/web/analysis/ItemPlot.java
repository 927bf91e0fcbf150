package wallplate.web.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import wallplate.statistics.ItemAnalysis;
import wallplate.statistics.ItemFigures;
import wallplate.web.page.PlotAxis;

/**
 * Every criterion by its facility and its discrimination. Places are units of the drawing.
 *
 * @param spots places to within half a spot; criteria that fall on the same one share it
 */
record ItemPlot(PlotAxis facility, PlotAxis discrimination, double zeroY, double poorY, List<Spot> spots) {

    static final double WIDTH = 460;
    static final double HEIGHT = 320;
    private static final double LEFT = 44;
    private static final double RIGHT = 24;
    private static final double TOP = 14;
    private static final double BOTTOM = 40;
    private static final double CELL = 23;
    private static final double POOR = 0.2;

    /**
     * One or several criteria.
     *
     * @param label the criterion's number, or how many they are
     * @param titles their numbers and titles
     */
    record Spot(double x, double y, boolean single, String label, String titles) {}

    /** Empty where no criterion has both figures. */
    static Optional<ItemPlot> of(ItemAnalysis analysis) {
        List<ItemFigures> told = analysis.items().stream()
                .filter(item -> item.facility().told().isPresent()
                        && item.discrimination().told().isPresent())
                .toList();
        if (told.isEmpty()) {
            return Optional.empty();
        }
        double lowest = told.stream().mapToDouble(ItemPlot::discrimination).min().orElse(0);
        double hardest = told.stream().mapToDouble(ItemPlot::facility).min().orElse(0);
        PlotAxis across = new PlotAxis(Math.max(0, Math.floor(5 * hardest - 0.5) / 5), 1, LEFT, WIDTH - RIGHT);
        PlotAxis up = new PlotAxis(Math.min(-0.2, Math.floor(5 * lowest - 0.3) / 5), 1, HEIGHT - BOTTOM, TOP);
        return Optional.of(new ItemPlot(across, up, up.at(0), up.at(POOR), spots(told, across, up)));
    }

    /** On a grid as wide as a spot, so that no spot hides another. */
    private static List<Spot> spots(List<ItemFigures> items, PlotAxis across, PlotAxis up) {
        Map<Long, Map<Long, List<ItemFigures>>> cells = new TreeMap<>();
        for (ItemFigures item : items) {
            long column = Math.round(across.at(facility(item)) / CELL);
            long row = Math.round(up.at(discrimination(item)) / CELL);
            cells.computeIfAbsent(column, one -> new TreeMap<>())
                    .computeIfAbsent(row, one -> new ArrayList<>())
                    .add(item);
        }
        List<Spot> spots = new ArrayList<>();
        cells.forEach((column, rows) -> rows.forEach((row, cell) -> spots.add(spot(column * CELL, row * CELL, cell))));
        return List.copyOf(spots);
    }

    private static Spot spot(double x, double y, List<ItemFigures> cell) {
        boolean single = cell.size() == 1;
        List<String> titles =
                cell.stream().map(item -> item.place() + " " + item.item().title()).toList();
        return new Spot(
                x, y, single, single ? Integer.toString(cell.get(0).place()) : "×" + cell.size(), String.join(", ", titles));
    }

    private static double facility(ItemFigures item) {
        return item.facility().told().orElseThrow();
    }

    private static double discrimination(ItemFigures item) {
        return item.discrimination().told().orElseThrow();
    }

    public double right() {
        return facility.to();
    }

    public double bottom() {
        return discrimination.from();
    }
}
