/** An id type for each kind of thing, so that no two kinds can be mixed up. */
@NullMarked
package org.standclear.platform.ids;

import org.jspecify.annotations.NullMarked;
