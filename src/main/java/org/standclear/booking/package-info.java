/** The calendar: slot grids, opening hours, bookings, quota, no double booking. */
@ApplicationModule(
        displayName = "booking",
        allowedDependencies = {"message", "cell", "people", "trail", "platform", "core"})
@NullMarked
package org.standclear.booking;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
