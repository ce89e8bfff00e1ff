/** Text that people type: what is taken, and in which form it is kept. */
@NullMarked
package org.standclear.platform.text;

import org.jspecify.annotations.NullMarked;
