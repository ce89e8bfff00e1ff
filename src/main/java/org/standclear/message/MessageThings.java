package org.standclear.message;

import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.platform.lab.LabThings;

/** Which lab messages are of. */
@Component
class MessageThings implements LabThings {

    @Override
    public List<Kind> kinds() {
        return List.of(Kind.own("messages"));
    }
}
