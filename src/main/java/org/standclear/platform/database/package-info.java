/** What the database itself refuses, where an engine needs code for it, and what the two engines call differently. */
@NullMarked
package org.standclear.platform.database;

import org.jspecify.annotations.NullMarked;
