/** Personal tokens in the database. */
@NullMarked
package org.standclear.people.tokens;

import org.jspecify.annotations.NullMarked;
