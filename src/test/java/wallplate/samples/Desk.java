package wallplate.samples;

import wallplate.geometry.Point;

/** What a photographed sheet lies on. */
record Desk(Kind kind, double light, double contrast, double turnDegrees, Grain grain) {

    enum Kind {
        WOOD,
        PLAIN,
        CLOTH,
        TILES
    }

    static Desk draw(Grain grain, Chance chance) {
        Kind kind = chance.oneOf(Kind.values());
        return new Desk(kind, chance.between(0.18, 0.62), chance.between(0.05, 0.35), chance.between(-30, 30), grain);
    }

    /** The desk's lightness at a place given in the sheet's own millimetres. */
    double tone(Point place) {
        double cosine = Math.cos(Math.toRadians(turnDegrees));
        double sine = Math.sin(Math.toRadians(turnDegrees));
        double along = place.x() * cosine + place.y() * sine + 1000;
        double across = place.y() * cosine - place.x() * sine + 1000;
        double pattern = switch (kind) {
            case WOOD -> grain.at(along / 60, across / 1.3) - 0.5 + 0.6 * (grain.at(along / 15, across / 0.5) - 0.5);
            case PLAIN -> 0.25 * (grain.at(along / 9, across / 9) - 0.5);
            case CLOTH -> 0.5 * (grain.at(along / 0.7, across / 0.7) - 0.5) + 0.3 * Math.sin(along * 2.6) * Math.sin(across * 2.6);
            case TILES -> along % 105 < 4 || across % 105 < 4 ? -0.6 : 0.3 * (grain.at(along / 5, across / 5) - 0.5);
        };
        return Math.max(0.02, light * (1 + 2 * contrast * pattern));
    }
}
