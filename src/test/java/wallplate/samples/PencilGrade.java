package wallplate.samples;

/**
 * A pencil as it marks this paper.
 *
 * @param darkness deposit of an outline at full pressure, 0 none to 1 black
 * @param widthMm width of an outline
 * @param grain how strongly the paper's grain shows in the line, 0 not at all to 1
 */
record PencilGrade(String name, double darkness, double widthMm, double grain) {

    static PencilGrade draw(Chance chance) {
        PencilGrade sharp = switch (chance.whole(0, 5)) {
            case 0 -> new PencilGrade("2H", 0.58, 0.26, 0.7);
            case 1 -> new PencilGrade("H", 0.68, 0.30, 0.75);
            case 2, 3 -> new PencilGrade("HB", 0.80, 0.36, 0.8);
            case 4 -> new PencilGrade("B", 0.88, 0.44, 0.82);
            default -> new PencilGrade("2B", 0.93, 0.52, 0.82);
        };
        return new PencilGrade(
                sharp.name,
                Math.min(0.97, sharp.darkness * chance.between(0.85, 1.1)),
                sharp.widthMm * chance.between(0.8, 1.25),
                sharp.grain * chance.between(0.7, 1.2));
    }
}
