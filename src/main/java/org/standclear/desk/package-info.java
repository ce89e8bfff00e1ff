/** Start pages that join what the other features know; read only. */
@ApplicationModule(
        displayName = "desk",
        allowedDependencies = {
            "incident",
            "run",
            "signoff",
            "check",
            "booking",
            "message",
            "program",
            "cell",
            "people",
            "trail",
            "platform",
            "core"
        })
@NullMarked
package org.standclear.desk;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
