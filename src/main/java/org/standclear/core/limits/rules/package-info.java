/** The rules themselves, one a type; each names its source. */
@NullMarked
package org.standclear.core.limits.rules;

import org.jspecify.annotations.NullMarked;
