/** Standclear: one application that runs a robot lab, cut into feature packages that only look downwards. */
@NullMarked
package org.standclear;

import org.jspecify.annotations.NullMarked;
