/** Courses, sections, enrolments and assignments in the database. */
@NullMarked
package org.standclear.people.courses;

import org.jspecify.annotations.NullMarked;
