/** The pages about people and courses, as a browser meets them. */
@NullMarked
package org.standclear.people.web;

import org.jspecify.annotations.NullMarked;
