/** The page of a room's numbers: what holds, since when and why, and the form that changes them. */
@NullMarked
package org.standclear.platform.numbers.web;

import org.jspecify.annotations.NullMarked;
