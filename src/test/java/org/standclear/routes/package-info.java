/** Every route against every role. */
@NullMarked
package org.standclear.routes;

import org.jspecify.annotations.NullMarked;
