package org.standclear.platform.strip;

/**
 * A full hour on a strip.
 *
 * @param x its place in percent of the strip's width
 * @param hour the hour in two digits
 */
public record HourMark(String x, String hour) {}
