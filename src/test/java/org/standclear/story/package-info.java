/** The whole main job, lived through in real browsers. */
@NullMarked
package org.standclear.story;

import org.jspecify.annotations.NullMarked;
