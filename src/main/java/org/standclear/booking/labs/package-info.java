/** The labs of an installation: making one, appointing its staff, taking it out of use. */
@NullMarked
package org.standclear.booking.labs;

import org.jspecify.annotations.NullMarked;
