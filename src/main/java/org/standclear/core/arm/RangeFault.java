package org.standclear.core.arm;

/** An axis that would have to stand outside its range. */
public record RangeFault(Axis axis, double value) {}
