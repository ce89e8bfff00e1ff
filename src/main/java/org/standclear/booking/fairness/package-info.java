/** Who got how many slots, who was left out, and how much of the lab's time was used. */
@NullMarked
package org.standclear.booking.fairness;

import org.jspecify.annotations.NullMarked;
