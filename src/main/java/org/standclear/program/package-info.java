/** Uploaded programs: immutable revisions and their declarations; the phrasebooks of cells. */
@ApplicationModule(
        displayName = "program",
        allowedDependencies = {"cell", "people", "trail", "platform", "core"})
@NullMarked
package org.standclear.program;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
