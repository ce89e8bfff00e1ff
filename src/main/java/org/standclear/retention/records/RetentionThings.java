package org.standclear.retention.records;

import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.platform.lab.LabThings;

/** Which lab holds and disposal lists are of. */
@Component
class RetentionThings implements LabThings {

    @Override
    public List<Kind> kinds() {
        return List.of(Kind.own("retention_holds"), Kind.own("retention_lists"), Kind.own("retention_proposals"));
    }
}
