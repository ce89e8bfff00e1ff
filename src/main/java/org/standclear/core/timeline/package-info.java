/** A program's motion laid out in time: what the arm does at each moment of one pass, for those who draw it. */
@NullMarked
package org.standclear.core.timeline;

import org.jspecify.annotations.NullMarked;
