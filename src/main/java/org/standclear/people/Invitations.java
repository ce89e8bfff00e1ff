package org.standclear.people;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.SectionId;

/**
 * Asks people of other labs into a section. Nothing of them is known in this lab before they have said yes, not even whether
 * anybody has that sign-in name: who asks is answered alike in every case.
 */
public interface Invitations {

    /** Asks whoever has the sign-in name; asking again changes nothing. */
    void invite(String login, SectionId section, PersonId by);

    /** Those of a course that nobody has answered, by section and sign-in name. */
    List<Waiting> waiting(CourseId course);

    /** Takes one back; says whether it still stood. */
    boolean withdraw(CourseId course, UUID invitation, PersonId by);

    /** What the person is asked, of every lab. */
    List<Asked> of(Person person);

    /** Enrols the person, who is a student of that lab from then on; empty when nobody asks that of the person any more. */
    Optional<Asked> accept(UUID invitation, Person person);

    /** Ends it; who asked sees only that it is gone. */
    boolean decline(UUID invitation, Person person);

    /** One that stands, for who asks. */
    record Waiting(UUID id, String login, String section, PersonId by, Instant at) {}

    /** One that stands, for who is asked. */
    record Asked(UUID id, String lab, String course, String section, PersonId by, Instant at) {}

    /** Tells somebody that they are asked. */
    interface Letters {

        /** In the transaction of the asking. */
        void asked(PersonId person, String lab, String course);
    }
}
