/** What the database itself refuses, where an engine needs code for it. */
@NullMarked
package org.standclear.platform.database;

import org.jspecify.annotations.NullMarked;
