/** What changed from one revision of a program to the next, in words. */
@NullMarked
package org.standclear.core.difference;

import org.jspecify.annotations.NullMarked;
