package org.standclear.core.cell;

/** A part that is handled at the cell, as the cell file lists it. */
public record Part(String name, double massKg) {}
