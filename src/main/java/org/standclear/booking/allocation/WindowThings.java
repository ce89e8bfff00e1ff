package org.standclear.booking.allocation;

import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.platform.lab.LabThings;

/** Which lab windows, wishes and searches belong to. */
@Component
class WindowThings implements LabThings {

    @Override
    public List<Kind> kinds() {
        return List.of(
                Kind.own("booking_windows"),
                Kind.of("booking_turn_requests", "window_id", "booking_windows"),
                Kind.of("booking_searches", "window_id", "booking_windows"));
    }
}
