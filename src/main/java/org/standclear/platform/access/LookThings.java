package org.standclear.platform.access;

import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.platform.lab.LabThings;

/** Which lab looks at records are of. */
@Component
class LookThings implements LabThings {

    @Override
    public List<Kind> kinds() {
        return List.of(Kind.own("platform_looks"));
    }
}
