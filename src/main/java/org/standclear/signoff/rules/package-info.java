/** What stands in the way of a release, what makes one lapse, and which answers agree: rules as values, no database. */
@NullMarked
package org.standclear.signoff.rules;

import org.jspecify.annotations.NullMarked;
