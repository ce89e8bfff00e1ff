/** Stored answers of the check for a program revision on a cell version. */
@ApplicationModule(
        displayName = "check",
        allowedDependencies = {"program", "cell", "people", "trail", "platform", "core"})
@NullMarked
package org.standclear.check;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
