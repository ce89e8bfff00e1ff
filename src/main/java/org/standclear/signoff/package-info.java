/** Session list, bench list, signatures, release and lapse. */
@ApplicationModule(
        displayName = "signoff",
        allowedDependencies = {"check", "booking", "program", "cell", "people", "trail", "platform", "core"})
@NullMarked
package org.standclear.signoff;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
