/** The rules: each looks at what is known and says what it found. */
@NullMarked
package org.standclear.core.limits;

import org.jspecify.annotations.NullMarked;
