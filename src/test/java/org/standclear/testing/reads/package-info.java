/** Counts the rows that a page's statements read, on both engines. */
@NullMarked
package org.standclear.testing.reads;

import org.jspecify.annotations.NullMarked;
