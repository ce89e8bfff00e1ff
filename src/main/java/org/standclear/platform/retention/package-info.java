/** The doors of keeping and disposing: each room disposes of its own records, and says what it has to keep back. */
@NullMarked
package org.standclear.platform.retention;

import org.jspecify.annotations.NullMarked;
