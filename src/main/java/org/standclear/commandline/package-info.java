/** The commands of the jar that start no server. */
@ApplicationModule(
        displayName = "command line",
        allowedDependencies = {"trail", "platform", "core"})
@NullMarked
package org.standclear.commandline;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
