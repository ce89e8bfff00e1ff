/** The page Record: entries, exports, verify. */
@NullMarked
package org.standclear.trail.web;

import org.jspecify.annotations.NullMarked;
