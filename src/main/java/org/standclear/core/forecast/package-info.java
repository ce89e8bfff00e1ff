/** What a due date does to the lab's days, and how long people wait for a release: demand per day and a simulation. */
@NullMarked
package org.standclear.core.forecast;

import org.jspecify.annotations.NullMarked;
