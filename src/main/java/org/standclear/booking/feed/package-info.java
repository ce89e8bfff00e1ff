/** Calendar feeds: bookings as other programs read them (RFC 5545), behind secret addresses. */
@NullMarked
package org.standclear.booking.feed;

import org.jspecify.annotations.NullMarked;
