package wallplate.marking;

import java.util.List;

/**
 * The criteria of a sheet that share a maximum.
 *
 * @param criteria the ids of its criteria
 * @param maximum the most marks that they bring together
 */
public record GroupTotal(String id, String title, List<String> criteria, double maximum) {
    public GroupTotal {
        criteria = List.copyOf(criteria);
    }
}
