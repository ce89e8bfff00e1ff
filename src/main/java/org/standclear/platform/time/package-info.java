/** The clock, and how instants are stored and shown in the lab's zone. */
@NullMarked
package org.standclear.platform.time;

import org.jspecify.annotations.NullMarked;
