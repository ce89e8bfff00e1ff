package org.standclear.booking.allocation;

import java.time.Clock;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.People;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.time.LabTime;

/** Ends a window without a plan, and takes that back until its first day; requests stay, everybody who asked is told. */
@Service
public class WindowClosing {

    private static final int LONGEST_REASON = 200;

    private final Windows windows;
    private final Searches searches;
    private final WindowProblem problems;
    private final WindowLetters letters;
    private final People people;
    private final LabTime labTime;
    private final Clock clock;

    WindowClosing(
            Windows windows,
            Searches searches,
            WindowProblem problems,
            WindowLetters letters,
            People people,
            LabTime labTime,
            Clock clock) {
        this.windows = windows;
        this.searches = searches;
        this.problems = problems;
        this.letters = letters;
        this.people = people;
        this.labTime = labTime;
        this.clock = clock;
    }

    /** Nothing was changed, and why; the field is empty when it is about the window. */
    public record Refused(String field, String says) {}

    /** Ends it, searches that go on too; or says why not. Lab staff only. */
    @Transactional
    public Optional<Refused> close(UUID id, String reason, PersonId by) {
        if (PlainText.check(reason, LONGEST_REASON) instanceof PlainText.Refused refused) {
            return Optional.of(new Refused("reason", refused.says()));
        }
        String text = ((PlainText.Fine) PlainText.check(reason, LONGEST_REASON)).text();
        Window window = windows.lockForStaff(id, by);
        if (window.accepted() != null) {
            return Optional.of(new Refused(
                    "", "A plan of this window is accepted: undo that first, or cancel its bookings one by one."));
        }
        Window.Closed closed = window.closed();
        if (closed != null) {
            return Optional.of(new Refused(
                    "",
                    people.printedName(closed.by()) + " closed it at " + labTime.full(closed.at())
                            + ". Nothing was changed."));
        }
        searches.of(id).stream()
                .filter(search -> search.state() == Search.State.RUNNING)
                .forEach(search -> searches.stop(search.id()));
        windows.close(id, by, text);
        windows.tell(
                "booking.window-closed",
                id,
                by,
                "The window \"" + window.title() + "\" was closed without a plan: " + text);
        letters.closed(window, text);
        return Optional.empty();
    }

    /** Takes the closing back, or says why not. */
    @Transactional
    public Optional<String> reopen(UUID id, PersonId by) {
        Window window = windows.lockForStaff(id, by);
        if (window.closed() == null) {
            return Optional.of("The window is not closed.");
        }
        if (isBegun(window)) {
            return Optional.of(
                    "The window has begun: no plan can be accepted for it any more. Open a new one instead.");
        }
        windows.reopen(id);
        windows.tell("booking.window-reopened", id, by, "The window \"" + window.title() + "\" is open again.");
        letters.reopened(windows.find(id).orElseThrow());
        return Optional.empty();
    }

    /** Whether its first day is here, so that no plan can be accepted any more. */
    public boolean isBegun(Window window) {
        return !clock.instant().isBefore(problems.span(window).from());
    }
}
