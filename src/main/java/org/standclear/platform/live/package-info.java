/** Tells the pages of every instance that something about a cell changed, once it is committed. */
@NullMarked
package org.standclear.platform.live;

import org.jspecify.annotations.NullMarked;
