/**
 * How long things take, measured with JMH: run a class's {@code main} from the test class path.
 *
 * <p>The figures that the project promises stand in each class's javadoc.
 */
@org.jspecify.annotations.NullMarked
package wallplate.benchmark;
