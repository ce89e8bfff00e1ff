/** Support for tests: databases of both engines, a clock that tests move, and the composed annotations that use them. */
@NullMarked
package org.standclear.testing;

import org.jspecify.annotations.NullMarked;
