package org.standclear.cell;

import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.platform.lab.LabThings;

/** Which lab cells and what stands in their records belong to. */
@Component
class CellThings implements LabThings {

    @Override
    public List<Kind> kinds() {
        return List.of(
                Kind.own("cells"),
                Kind.own("cell_proposals"),
                Kind.own("cell_equipment"),
                Kind.of("cell_features", "cell_id", "cells"),
                Kind.of("cell_tags", "cell_id", "cells"),
                Kind.of("cell_day_tests", "cell_id", "cells"),
                Kind.of("cell_stops", "cell_id", "cells"),
                Kind.of("cell_tool_readings", "cell_id", "cells"),
                Kind.of("cell_tool_changes", "cell_id", "cells"),
                Kind.of("cell_duties_done", "cell_id", "cells"));
    }
}
