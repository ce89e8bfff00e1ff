/** The invented college that the demo shows, loaded through the doors that the pages use. */
@ApplicationModule(
        displayName = "demo",
        allowedDependencies = {
            "desk",
            "retention",
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
package org.standclear.demo;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
