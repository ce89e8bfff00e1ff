/** Programs and their declarations: what a file says, whatever the format it is written in. */
@NullMarked
package org.standclear.core.program;

import org.jspecify.annotations.NullMarked;
