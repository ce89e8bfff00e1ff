/** Checks of the rules inside. */
@NullMarked
package org.standclear.people.accounts;

import org.jspecify.annotations.NullMarked;
