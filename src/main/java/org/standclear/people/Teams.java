package org.standclear.people;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.SectionId;

/** Pairs and teams of a section: who works with whom. Who leaves one stays in its history. */
public interface Teams {

    /** Those of the course that stand, by section, team and name. */
    List<Member> of(CourseId course);

    /** The sections of the course by code, for a form. */
    Map<SectionId, String> sections(CourseId course);

    /** Those of the course that ended, latest end first. */
    List<Member> past(CourseId course, int atMost);

    /** All of a person, standing ones first, then latest first. */
    List<Member> ofPerson(PersonId person);

    /** Everybody who is in a team with the person now. */
    Set<PersonId> partnersOf(PersonId person);

    /**
     * Puts people of the section into a team, out of any other of that section; says which field is wrong and why, or
     * nothing. The caller has checked that the person may.
     */
    Optional<Wrong> put(SectionId section, String team, List<PersonId> people, PersonId by);

    /** The person leaves the team; false when that was said already. */
    boolean takeOut(UUID member, PersonId by);

    /** What is wrong with which field. */
    record Wrong(String field, String says) {}

    /**
     * That a person is, or was, in a team.
     *
     * @param section code of the section, with its course
     * @param until null while it stands
     */
    record Member(
            UUID id,
            CourseId course,
            String section,
            String team,
            PersonId person,
            Instant from,
            @Nullable Instant until) {}
}
