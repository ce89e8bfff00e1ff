/** Tests that walk over all screens of the demo college, whichever feature they belong to. */
@NullMarked
package org.standclear.screens;

import org.jspecify.annotations.NullMarked;
