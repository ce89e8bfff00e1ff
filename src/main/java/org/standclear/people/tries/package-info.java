/** Counting wrong tries at passwords, signing PINs and the set-up code, alike for any number of instances. */
@NullMarked
package org.standclear.people.tries;

import org.jspecify.annotations.NullMarked;
