/** Accounts, roles, authorisations, duty, courses and sections. */
@ApplicationModule(
        displayName = "people",
        allowedDependencies = {"trail", "platform", "core"})
@NullMarked
package org.standclear.people;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
