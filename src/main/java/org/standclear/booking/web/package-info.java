/** Pages of the calendar: free slots, the booking form, and what people do to a booking. */
@NullMarked
package org.standclear.booking.web;

import org.jspecify.annotations.NullMarked;
