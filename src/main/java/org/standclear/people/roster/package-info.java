/** Rosters from files: reading, differences, applying and undoing. */
@NullMarked
package org.standclear.people.roster;

import org.jspecify.annotations.NullMarked;
