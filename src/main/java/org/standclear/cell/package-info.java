/** Robot cells: immutable versions, states, tags, day tests. */
@ApplicationModule(
        displayName = "cell",
        allowedDependencies = {"trail", "platform", "core"})
@NullMarked
package org.standclear.cell;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
