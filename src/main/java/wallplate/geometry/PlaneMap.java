package wallplate.geometry;

/** Carries points of one plane to another, one to one within the region it is meant for. */
public interface PlaneMap {

    Point apply(Point point);

    /** The map that undoes this one. */
    PlaneMap inverse();

    default Segment apply(Segment segment) {
        return new Segment(apply(segment.start()), apply(segment.end()));
    }

    /** First this map, then the other. */
    default PlaneMap then(PlaneMap next) {
        PlaneMap first = this;
        return new PlaneMap() {
            @Override
            public Point apply(Point point) {
                return next.apply(first.apply(point));
            }

            @Override
            public PlaneMap inverse() {
                return next.inverse().then(first.inverse());
            }
        };
    }
}
