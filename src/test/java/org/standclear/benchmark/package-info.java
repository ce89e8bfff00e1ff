/** Programs that measure the packaged application; started by {@code mvn -Pbenchmark package}, never by the tests. */
@NullMarked
package org.standclear.benchmark;

import org.jspecify.annotations.NullMarked;
