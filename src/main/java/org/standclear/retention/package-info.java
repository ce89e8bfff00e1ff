/** How long records are kept: clocks, legal holds, disposal by approved lists, the disposal log; rooms below dispose. */
@ApplicationModule(
        displayName = "retention",
        allowedDependencies = {"people", "trail", "platform"})
@NullMarked
package org.standclear.retention;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
