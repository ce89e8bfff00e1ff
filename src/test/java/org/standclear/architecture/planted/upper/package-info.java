/** A module that stands above another. */
@ApplicationModule(allowedDependencies = {"lower"})
@NullMarked
package org.standclear.architecture.planted.upper;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
