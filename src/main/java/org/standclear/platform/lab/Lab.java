package org.standclear.platform.lab;

import java.time.ZoneId;
import org.standclear.platform.ids.LabId;

/**
 * A robot lab: where it is, which zone its times are in, and what to do when someone is hurt.
 *
 * @param emergencyNumber the number to call first, as dialled from the lab
 * @param firstAider who and where, in words
 * @param stopMap where the e-stops are, in words
 */
public record Lab(
        LabId id,
        String college,
        String room,
        String name,
        ZoneId zone,
        String emergencyNumber,
        String firstAider,
        String stopMap) {}
