package wallplate.records;

import java.util.Collection;
import java.util.List;
import java.util.Set;

/** The names in the scan store that records refer to. */
public interface StoredNames {

    /** Those of the given names that some record refers to. */
    Set<String> inUse(Collection<String> names);

    /** The columns that hold such names, as table and column parted by a point. */
    List<String> columns();
}
