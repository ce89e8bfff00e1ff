/** Time drawn as a strip: places in percent of its width, so that a page scales it without scripts or styles. */
@NullMarked
package org.standclear.platform.strip;

import org.jspecify.annotations.NullMarked;
