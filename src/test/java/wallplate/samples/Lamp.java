package wallplate.samples;

import wallplate.geometry.Point;

/** Uneven light over a photographed sheet: a fall-off to one side and perhaps a soft-edged shadow. */
final class Lamp {

    private final double unevenness;
    private final double shadow;
    private final double directionX;
    private final double directionY;
    private final double middleX;
    private final double middleY;
    private final double reach;
    private final double edgeDegrees;
    private final double edgeAt;
    private final double edgeWidth;
    private final Grain grain;

    Lamp(Paper paper, double unevenness, double shadow, Grain grain, Chance chance) {
        this.unevenness = unevenness;
        this.shadow = shadow;
        this.grain = grain;
        double angle = Math.toRadians(chance.between(0, 360));
        this.directionX = Math.cos(angle);
        this.directionY = Math.sin(angle);
        this.middleX = paper.width() / 2;
        this.middleY = paper.height() / 2;
        this.reach = Math.hypot(paper.width(), paper.height()) / 2;
        this.edgeDegrees = chance.between(0, 360);
        this.edgeAt = chance.between(0.1, 0.7) * reach;
        this.edgeWidth = chance.between(3, 30);
    }

    /** The share of light at a place in the sheet's own millimetres. */
    double at(Point place) {
        double x = (place.x() - middleX) / reach;
        double y = (place.y() - middleY) / reach;
        double along = x * directionX + y * directionY;
        double light = 1 - unevenness * (0.5 - 0.5 * Math.max(-1.3, Math.min(1.3, along))) - 0.08 * (x * x + y * y);
        if (shadow == 0) {
            return light;
        }
        double across = (place.x() - middleX) * Math.cos(Math.toRadians(edgeDegrees))
                + (place.y() - middleY) * Math.sin(Math.toRadians(edgeDegrees));
        double bent = across - edgeAt + 25 * (grain.at(place.x() / 60 + 200, place.y() / 60 + 200) - 0.5);
        double inShadow = 1 / (1 + Math.exp(-bent / edgeWidth * 4));
        return light * (1 - shadow * inShadow);
    }
}
