/** The page that attaches a program to a booking. */
@NullMarked
package org.standclear.signoff.web;

import org.jspecify.annotations.NullMarked;
