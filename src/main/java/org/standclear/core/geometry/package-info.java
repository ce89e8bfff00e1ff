/** Points and boxes in the base frame (mm, right-handed, z up), and the search for extreme values along a path. */
@NullMarked
package org.standclear.core.geometry;

import org.jspecify.annotations.NullMarked;
