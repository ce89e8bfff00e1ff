package org.standclear.booking;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.message.Message;
import org.standclear.message.Messages;
import org.standclear.people.DueDates.DueAssignment;
import org.standclear.people.DueDates.DueSection;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.SectionId;
import org.standclear.platform.time.LabTime;

/** Tells students that their section's due date is another one, in the transaction of the change. */
@Component
public class DueLetters {

    private final Messages messages;
    private final LabTime labTime;
    private final JdbcClient jdbc;

    DueLetters(Messages messages, LabTime labTime, JdbcClient jdbc) {
        this.messages = messages;
        this.labTime = labTime;
        this.jdbc = jdbc;
    }

    /**
     * The due dates were moved.
     *
     * @param before the assignment as it was
     * @param due the due dates in force now, by section
     */
    public void moved(DueAssignment before, Map<SectionId, Instant> due, String reason) {
        for (DueSection section : before.sections()) {
            Instant now = due.getOrDefault(section.id(), section.due());
            if (now.equals(section.due())) {
                continue;
            }
            String subject = "\"" + before.title() + "\" is due " + labTime.full(now);
            List<String> lines = List.of(
                    before.course() + ", section " + section.code() + ": it was due " + labTime.full(section.due())
                            + ".",
                    "Why: " + reason,
                    "Bookings that you have stay where they are.");
            students(section.id())
                    .forEach(student -> messages.tell(Message.of(student, "due-date-moved", subject, lines, "/me")));
        }
    }

    private List<PersonId> students(SectionId section) {
        return jdbc.sql("""
                select e.person_id from enrolments e join people p on p.id = e.person_id
                where e.section_id = :section and p.active order by e.person_id""")
                .param("section", section.value())
                .query((row, number) -> new PersonId(row.getObject(1, UUID.class)))
                .list();
    }
}
