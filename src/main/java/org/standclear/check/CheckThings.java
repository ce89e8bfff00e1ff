package org.standclear.check;

import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.platform.lab.LabThings;

/** Which lab the answers of the check belong to: that of the cell. */
@Component
class CheckThings implements LabThings {

    @Override
    public List<Kind> kinds() {
        return List.of(Kind.of("check_answers", "cell_id", "cells"));
    }
}
