package org.standclear.core.timeline;

import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.geometry.Vector;

/**
 * What is known of one moment.
 *
 * @param seconds since the program began
 * @param tool where the tool point is; null before the first place that is known
 * @param axes where the axes stand; null when not known
 * @param rates how fast the axes go, per second; null when not known
 * @param toolSpeedMmS 0 while the arm stands; not looked at in a span without known speeds
 */
public record Moment(
        double seconds,
        Span span,
        @Nullable Vector tool,
        @Nullable AxisValues axes,
        @Nullable AxisValues rates,
        double toolSpeedMmS) {}
