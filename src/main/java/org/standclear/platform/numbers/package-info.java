/** Whole numbers that a lab sets for itself, with a reason: what they are called, between what they may be, every change. */
@NullMarked
package org.standclear.platform.numbers;

import org.jspecify.annotations.NullMarked;
