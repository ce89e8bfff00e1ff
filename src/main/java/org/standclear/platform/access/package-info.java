/** Who looked at whose record. */
@NullMarked
package org.standclear.platform.access;

import org.jspecify.annotations.NullMarked;
