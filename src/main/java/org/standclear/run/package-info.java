/** The run log: starts, stop events, finish, close-out. */
@ApplicationModule(
        displayName = "run",
        allowedDependencies = {"signoff", "check", "booking", "program", "cell", "people", "trail", "platform", "core"})
@NullMarked
package org.standclear.run;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
