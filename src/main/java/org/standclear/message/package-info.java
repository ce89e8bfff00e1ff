/** What people are told: a box on their own page, and the same by e-mail where a mail server is set up. */
@ApplicationModule(
        displayName = "message",
        allowedDependencies = {"people", "trail", "platform", "core"})
@NullMarked
package org.standclear.message;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
