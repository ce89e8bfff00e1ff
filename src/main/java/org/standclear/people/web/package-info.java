/** Pages about people and courses, the sign-in page and the set-up. */
@NullMarked
package org.standclear.people.web;

import org.jspecify.annotations.NullMarked;
