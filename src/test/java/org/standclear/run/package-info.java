/** Tests of the run log. */
@NullMarked
package org.standclear.run;

import org.jspecify.annotations.NullMarked;
