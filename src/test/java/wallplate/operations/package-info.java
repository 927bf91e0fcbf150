/** The program as an operator runs it: several processes, a database server, a store, and what can happen to them. */
@NullMarked
package wallplate.operations;

import org.jspecify.annotations.NullMarked;
