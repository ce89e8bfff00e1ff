/** Keeps lists, signatures, releases and lapses, and asks the rules under locks. */
@NullMarked
package org.standclear.signoff.records;

import org.jspecify.annotations.NullMarked;
