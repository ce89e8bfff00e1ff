/** Checks of the rules inside. */
@NullMarked
package org.standclear.people.tries;

import org.jspecify.annotations.NullMarked;
