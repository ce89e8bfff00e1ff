/**
 * Authorisations and duty periods in the database.
 *
 * <p>Whoever is on the staff may plan anybody's duty, their own too: a lab with one technician would otherwise have no
 * releases on a day when the instructor is away. Planning oneself therefore stops nobody; it is kept visible instead. The
 * record says "planned by themselves", and the duty page marks each such period and counts them for whoever reads the
 * week.
 */
@NullMarked
package org.standclear.people.duties;

import org.jspecify.annotations.NullMarked;
