/** Reads blocks of the open standard for numerical control, ISO 6983. */
@NullMarked
package org.standclear.core.program.blocks;

import org.jspecify.annotations.NullMarked;
