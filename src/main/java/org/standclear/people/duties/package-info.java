/** Authorisations and duty periods in the database. */
@NullMarked
package org.standclear.people.duties;

import org.jspecify.annotations.NullMarked;
