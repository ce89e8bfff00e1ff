/** Makes a plan from a problem, proves what no plan can better, and knows nothing of windows, people or the database. */
@NullMarked
package org.standclear.booking.allocation.solver;

import org.jspecify.annotations.NullMarked;
