/** Draws what a program does: views of the cell, speeds over time, moments of the pass; numbers come from the check. */
@NullMarked
package org.standclear.check.picture;

import org.jspecify.annotations.NullMarked;
