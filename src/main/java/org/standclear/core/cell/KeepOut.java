package org.standclear.core.cell;

import org.standclear.core.geometry.Box;

/** A named box that the widened path of the tool point must not enter. */
public record KeepOut(String name, Box box) {}
