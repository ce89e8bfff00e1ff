/** The files of programs, as text to keep and never as a page. */
@NullMarked
package org.standclear.program.web;

import org.jspecify.annotations.NullMarked;
