package org.standclear.architecture.planted.lower;

import org.standclear.architecture.planted.upper.Above;

/** Uses a type of a module that stands above its own. */
public record LooksUp(Above above) {}
