/** Fingerprints of bytes and texts. */
@NullMarked
package org.standclear.platform.digest;

import org.jspecify.annotations.NullMarked;
