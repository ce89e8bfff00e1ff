/** Evidence of a term and of a run on paper, and what an instructor reads and signs each week; reads all the others. */
@ApplicationModule(
        displayName = "report",
        allowedDependencies = {
            "incident",
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
package org.standclear.report;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
