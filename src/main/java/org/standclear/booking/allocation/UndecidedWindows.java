package org.standclear.booking.allocation;

import java.time.LocalDate;
import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.booking.SharedDays;
import org.standclear.platform.time.LabTime;

/** Windows that have no plan yet and have not begun. */
@Component
class UndecidedWindows implements SharedDays {

    private final Windows windows;
    private final LabTime labTime;

    UndecidedWindows(Windows windows, LabTime labTime) {
        this.windows = windows;
        this.labTime = labTime;
    }

    @Override
    public List<SharedOut> ahead() {
        LocalDate today = labTime.today();
        return windows.from(today).stream()
                .filter(window -> window.isUndecided() && window.firstDay().isAfter(today))
                .map(window -> new SharedOut(
                        window.id(),
                        window.title(),
                        window.firstDay(),
                        window.lastDay(),
                        window.takesRequests(labTime.now()) ? labTime.full(window.requestsUntil()) : ""))
                .toList();
    }
}
