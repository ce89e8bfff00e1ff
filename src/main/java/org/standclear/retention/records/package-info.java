/** Rules, holds, lists and the disposal log in the database. */
@NullMarked
package org.standclear.retention.records;

import org.jspecify.annotations.NullMarked;
