/** Arms: where the axes put the tool point, and which axis values reach a point. */
@NullMarked
package org.standclear.core.arm;

import org.jspecify.annotations.NullMarked;
