/** Shares a window's slots out: requests, the search in the background, the plan before and after it is accepted. */
@NullMarked
package org.standclear.booking.allocation;

import org.jspecify.annotations.NullMarked;
