package org.standclear.booking;

import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.message.Message;
import org.standclear.message.Messages;
import org.standclear.people.SectionChange;
import org.standclear.platform.ids.PersonId;

/** What somebody with bookings ahead is told when a roster changes their sections: one letter, however many they are. */
@Component
class SectionLetters {

    private static final int LONGEST_SUBJECT = 200;

    private final Messages messages;
    private final BookingLetters places;

    SectionLetters(Messages messages, BookingLetters places) {
        this.messages = messages;
        this.places = places;
    }

    /** A roster took the person out of sections, or into others of the same course. */
    void left(PersonId person, List<SectionChange> changes, List<Booking> ahead) {
        boolean hasNone = changes.stream().anyMatch(SectionLetters::leavesTheCourse);
        List<String> lines = new ArrayList<>();
        lines.add(ahead.size() == 1 ? "Your booking stays:" : "Your bookings stay:");
        ahead.forEach(booking -> lines.add(places.place(booking) + "."));
        changes.stream()
                .filter(change -> !change.came().isEmpty())
                .forEach(change -> lines.add("The due dates of " + joined(change.came()) + " are yours now."));
        lines.add((hasNone ? "Give up what you do not need. " : "") + "If the roster is wrong, tell your instructor.");
        tell(person, hasNone ? "left-section" : "moved-section", changes, "now", lines);
    }

    /** A roster was taken back. */
    void takenBack(PersonId person, List<SectionChange> changes) {
        boolean isBack = changes.stream().anyMatch(change -> !change.came().isEmpty());
        tell(
                person,
                isBack ? "back-in-section" : "left-section",
                changes,
                "again",
                List.of((isBack ? "The roster that had left you out" : "The roster that had put you in")
                        + " was taken back. Your bookings are as they were."));
    }

    private void tell(PersonId person, String kind, List<SectionChange> changes, String since, List<String> lines) {
        List<String> says = changes.stream().map(change -> says(change, since)).toList();
        if (says.size() == 1 && says.get(0).length() <= LONGEST_SUBJECT) {
            messages.tell(Message.of(person, kind, says.get(0), lines, "/me"));
            return;
        }
        List<String> all = new ArrayList<>();
        says.forEach(one -> all.add(one + "."));
        all.addAll(lines);
        messages.tell(Message.of(person, kind, "Your sections have changed", all, "/me"));
    }

    private static boolean leavesTheCourse(SectionChange change) {
        return change.came().isEmpty() && change.stays().isEmpty();
    }

    private static String says(SectionChange change, String since) {
        if (!change.came().isEmpty()) {
            return "You are in " + joined(change.came()) + " " + since
                    + (change.left().isEmpty() ? "" : ", not in " + joined(change.left()) + " any more");
        }
        return "You are not in " + joined(change.left()) + " any more"
                + (change.stays().isEmpty() ? "" : "; you stay in " + joined(change.stays()));
    }

    private static String joined(List<String> codes) {
        int last = codes.size() - 1;
        return last == 0 ? codes.get(0) : String.join(", ", codes.subList(0, last)) + " and " + codes.get(last);
    }
}
