/** Very many people at the moment when booking opens, sent at fixed times to two instances of the packaged application. */
@NullMarked
package org.standclear.benchmark.burst;

import org.jspecify.annotations.NullMarked;
