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
 * @param spots criteria that lie too close to be told apart share one
 */
record ItemPlot(PlotAxis facility, PlotAxis discrimination, double zeroY, double poorY, List<Spot> spots) {

    static final double WIDTH = 460;
    static final double HEIGHT = 320;
    private static final double LEFT = 44;
    private static final double RIGHT = 24;
    private static final double TOP = 14;
    private static final double BOTTOM = 40;
    private static final double CELL = 26;
    private static final int MOST_NUMBERS = 3;
    private static final double POOR = 0.2;

    /**
     * One or several criteria.
     *
     * @param label their numbers, or how many they are
     * @param titles their numbers and titles
     */
    record Spot(double x, double y, String label, String titles) {}

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
        PlotAxis across = new PlotAxis(0, 1, LEFT, WIDTH - RIGHT);
        PlotAxis up = new PlotAxis(Math.min(-0.2, Math.floor(5 * lowest) / 5), 1, HEIGHT - BOTTOM, TOP);
        return Optional.of(new ItemPlot(across, up, up.at(0), up.at(POOR), spots(told, across, up)));
    }

    private static List<Spot> spots(List<ItemFigures> items, PlotAxis across, PlotAxis up) {
        Map<String, List<ItemFigures>> cells = new TreeMap<>();
        for (ItemFigures item : items) {
            long column = Math.round(across.at(facility(item)) / CELL);
            long row = Math.round(up.at(discrimination(item)) / CELL);
            cells.computeIfAbsent("%04d %04d".formatted(column, row), cell -> new ArrayList<>()).add(item);
        }
        return cells.values().stream().map(cell -> spot(cell, across, up)).toList();
    }

    private static Spot spot(List<ItemFigures> cell, PlotAxis across, PlotAxis up) {
        List<String> numbers = cell.stream().map(item -> Integer.toString(item.place())).toList();
        String label = cell.size() <= MOST_NUMBERS ? String.join(", ", numbers) : numbers.get(0) + " and " + (cell.size() - 1) + " more";
        List<String> titles =
                cell.stream().map(item -> item.place() + " " + item.item().title()).toList();
        return new Spot(
                cell.stream().mapToDouble(item -> across.at(facility(item))).average().orElseThrow(),
                cell.stream().mapToDouble(item -> up.at(discrimination(item))).average().orElseThrow(),
                label,
                String.join(", ", titles));
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
