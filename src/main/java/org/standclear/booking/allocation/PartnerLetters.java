package org.standclear.booking.allocation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.message.Message;
import org.standclear.message.Messages;
import org.standclear.people.People;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;

/** What partners are told: that somebody counts on them, that it is over, what they answered; in the transaction of the act. */
@Component
class PartnerLetters {

    private final Messages messages;
    private final People people;
    private final LabTime labTime;

    PartnerLetters(Messages messages, People people, LabTime labTime) {
        this.messages = messages;
        this.people = people;
        this.labTime = labTime;
    }

    /** A request was sent, sent again or taken back: nobody is named without hearing of it, nor let go. */
    void changed(Window window, @Nullable TurnRequest before, @Nullable TurnRequest after) {
        Optional<PersonId> was = before == null ? Optional.empty() : before.named();
        Optional<PersonId> is = after == null ? Optional.empty() : after.named();
        if (before != null && was.isPresent() && !was.equals(is)) {
            tell(
                    window,
                    was.get(),
                    "partner-let-go",
                    name(before.operator()) + " does not count on you any more",
                    List.of("You are not named as partner in \"" + window.title()
                            + "\" by this person any more; there is nothing to do."));
        }
        if (after != null && is.isPresent() && (!was.equals(is) || isOther(before, after))) {
            tell(
                    window,
                    is.get(),
                    "partner-named",
                    name(after.operator()) + " names you as partner at the e-stop",
                    named(window, after));
        }
    }

    private static boolean isOther(@Nullable TurnRequest before, TurnRequest after) {
        return before == null
                || before.turns() != after.turns()
                || !before.canCome().equals(after.canCome());
    }

    private List<String> named(Window window, TurnRequest request) {
        List<String> lines = new ArrayList<>();
        lines.add("\"" + window.title() + "\": " + RequestWords.turns(request) + ", "
                + RequestWords.times(request, labTime) + ".");
        lines.add("If that is right, there is nothing to do.");
        lines.add("If not, decline on the page of the window by " + labTime.full(window.requestsUntil())
                + ": then the plan finds somebody else.");
        return lines;
    }

    /** The partner will not, so the plan finds an attendant. */
    void declined(Window window, PersonId operator, PersonId partner) {
        tell(
                window,
                operator,
                "partner-declined",
                name(partner) + " cannot be your partner",
                List.of(
                        "In \"" + window.title() + "\" the plan now finds an attendant for your turns.",
                        "You can name somebody else until " + labTime.full(window.requestsUntil()) + "."));
    }

    /** The partner can after all. */
    void canAfterAll(Window window, PersonId operator, PersonId partner, boolean isNamed) {
        tell(
                window,
                operator,
                "partner-can",
                name(partner) + " can be your partner after all",
                List.of(
                        isNamed
                                ? "In \"" + window.title() + "\" your turns are planned with this partner again."
                                : "In \"" + window.title() + "\" nothing was changed, since you name somebody else or"
                                        + " ask for no turns now."));
    }

    private String name(PersonId person) {
        return people.printedName(person);
    }

    private void tell(Window window, PersonId person, String kind, String subject, List<String> lines) {
        messages.tell(Message.of(person, kind, subject, lines, "/windows/" + window.id()));
    }
}
