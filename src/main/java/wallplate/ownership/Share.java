package wallplate.ownership;

/** The part of the records that somebody sees in lists. */
public sealed interface Share {

    /** The whole department's. */
    record Everything() implements Share {}

    /** What belongs to one account. */
    record OwnedBy(long account) implements Share {}

    /** The invented set that the program brings along. */
    record Demonstration() implements Share {}

    static Share everything() {
        return new Everything();
    }

    /**
     * The share as a condition of SQL; there is nothing to bind.
     *
     * @param owner the column with the owner's account
     * @param demonstration a condition that holds for what belongs to the demonstration
     */
    default String condition(String owner, String demonstration) {
        if (this instanceof OwnedBy owned) {
            return owner + " = " + owned.account();
        }
        return this instanceof Demonstration ? demonstration : "1 = 1";
    }
}
