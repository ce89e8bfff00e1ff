/** A module that may use nothing and looks up all the same. */
@ApplicationModule(allowedDependencies = {})
@NullMarked
package org.standclear.architecture.planted.lower;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
