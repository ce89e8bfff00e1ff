/** Sharing a window's slots out fairly: what is asked, what counts as better, the rules of a plan, and why a turn is left out. */
@NullMarked
package org.standclear.core.allocation;

import org.jspecify.annotations.NullMarked;
