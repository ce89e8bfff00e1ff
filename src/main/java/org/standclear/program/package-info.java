/** Uploaded programs: immutable revisions and their declarations. */
@ApplicationModule(
        displayName = "program",
        allowedDependencies = {"people", "trail", "platform", "core"})
@NullMarked
package org.standclear.program;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
