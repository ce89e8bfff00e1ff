/** Incidents: reports, frozen evidence, review, corrective actions; puts holds on cells. */
@ApplicationModule(
        displayName = "incident",
        allowedDependencies = {
            "run",
            "signoff",
            "check",
            "booking",
            "program",
            "cell",
            "people",
            "trail",
            "platform",
            "core"
        })
@NullMarked
package org.standclear.incident;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
