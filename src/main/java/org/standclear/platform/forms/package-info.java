/** Forms that are sent twice act once. */
@NullMarked
package org.standclear.platform.forms;

import org.jspecify.annotations.NullMarked;
