/** The files of programs, as text to keep and never as a page; the pages of phrasebooks. */
@NullMarked
package org.standclear.program.web;

import org.jspecify.annotations.NullMarked;
