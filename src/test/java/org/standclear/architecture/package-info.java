/** The rules of the house as tests: each passes on the tree as it is and is shown to catch a planted bad example. */
@NullMarked
package org.standclear.architecture;

import org.jspecify.annotations.NullMarked;
