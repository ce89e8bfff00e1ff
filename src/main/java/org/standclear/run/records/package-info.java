/** Keeps runs and their events, and moves bookings along with them. */
@NullMarked
package org.standclear.run.records;

import org.jspecify.annotations.NullMarked;
