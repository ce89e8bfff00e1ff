/** What makes a start shorter without leaving anything out: work beside the first thread, on the second core. */
@NullMarked
package org.standclear.platform.start;

import org.jspecify.annotations.NullMarked;
