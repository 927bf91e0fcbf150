package wallplate.ownership;

import java.util.Set;

/**
 * To whom a record belongs.
 *
 * @param owners accounts; none where it is nobody's
 * @param secondMarkers accounts to whom a sample with it is given
 * @param demonstration whether it is a part of the invented set that the program brings along
 */
public record Belonging(Set<Long> owners, Set<Long> secondMarkers, boolean demonstration) {
    public Belonging {
        owners = Set.copyOf(owners);
        secondMarkers = Set.copyOf(secondMarkers);
    }
}
