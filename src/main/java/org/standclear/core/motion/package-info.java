/** How a program moves: paths, profiles, speeds and times, held by reduced power and not. */
@NullMarked
package org.standclear.core.motion;

import org.jspecify.annotations.NullMarked;
