package org.standclear.program;

import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.platform.lab.LabThings;

/** Which lab programs and their revisions belong to. */
@Component
class ProgramThings implements LabThings {

    @Override
    public List<Kind> kinds() {
        return List.of(
                Kind.own("programs"),
                Kind.of("program_revisions", "program_id", "programs"),
                Kind.of("phrasebook_versions", "cell_id", "cells"));
    }
}
