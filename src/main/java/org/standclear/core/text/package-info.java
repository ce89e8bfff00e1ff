/** Texts that people bring: strict reading, and one plain sentence for what is wrong with them. */
@NullMarked
package org.standclear.core.text;

import org.jspecify.annotations.NullMarked;
