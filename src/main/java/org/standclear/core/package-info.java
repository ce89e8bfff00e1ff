/** The pure computation: the same input gives the same answer, anywhere and at any time. */
@ApplicationModule(
        displayName = "core",
        type = ApplicationModule.Type.OPEN,
        allowedDependencies = {})
@NullMarked
package org.standclear.core;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
