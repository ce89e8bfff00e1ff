/** Reads programs by a phrasebook: patterns that a lab writes for the language of its own robots. */
@NullMarked
package org.standclear.core.program.phrases;

import org.jspecify.annotations.NullMarked;
