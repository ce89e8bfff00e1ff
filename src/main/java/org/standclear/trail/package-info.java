/** Append-only, hash-chained record of everything that happened in a lab. */
@ApplicationModule(
        displayName = "trail",
        allowedDependencies = {"platform"})
@NullMarked
package org.standclear.trail;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
