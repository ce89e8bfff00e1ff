/** The door of the check: a program, its declaration and a cell go in, an answer with its findings comes out. */
@NullMarked
package org.standclear.core.check;

import org.jspecify.annotations.NullMarked;
