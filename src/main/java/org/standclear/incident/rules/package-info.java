/** What the review of an incident asks for, as values without a database. */
@NullMarked
package org.standclear.incident.rules;

import org.jspecify.annotations.NullMarked;
