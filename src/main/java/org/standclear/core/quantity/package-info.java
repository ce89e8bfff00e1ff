/** Comparing and showing numbers: tolerances, intervals, rounding towards the unsafe side. */
@NullMarked
package org.standclear.core.quantity;

import org.jspecify.annotations.NullMarked;
