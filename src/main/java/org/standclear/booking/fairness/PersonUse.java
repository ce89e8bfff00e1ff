package org.standclear.booking.fairness;

import java.time.Duration;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.PersonId;

/**
 * What one person had of the lab in a stretch of days.
 *
 * @param sections the person's sections, empty outside any
 * @param slots slots held, or held to the end
 * @param missed slots to which the person did not come, excused ones among them
 * @param lateCancels slots given up shortly before
 * @param excused lost slots, missed or given up late, that staff excused
 * @param unmet turns that accepted plans left out
 * @param waited times that the person waited for and that went by without a slot
 * @param ahead mean time from booking to the slot; nothing without any slot
 */
public record PersonUse(
        PersonId person,
        String name,
        String sections,
        int slots,
        int missed,
        int lateCancels,
        int excused,
        int unmet,
        int waited,
        @Nullable Duration ahead) {}
