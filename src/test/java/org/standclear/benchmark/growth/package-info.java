/** How long pages take when the database holds a thousand bookings, a hundred thousand, a million. */
@NullMarked
package org.standclear.benchmark.growth;

import org.jspecify.annotations.NullMarked;
