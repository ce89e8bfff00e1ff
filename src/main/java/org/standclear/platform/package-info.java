/** What every feature stands on: ids, time, security, forms, errors, layout. */
@ApplicationModule(
        displayName = "platform",
        type = ApplicationModule.Type.OPEN,
        allowedDependencies = {})
@NullMarked
package org.standclear.platform;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
