package org.standclear.platform.access;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.PersonId;

/** Keeps who looked at whose record: once for each person, record and hour, however often a page is opened again. */
public interface AccessLog {

    /**
     * Keeps that somebody looks; a look at one's own record is not kept.
     *
     * @param subject id of the thing that is looked at
     * @param whose people whom it names; when it names nobody, the look is kept all the same
     */
    void looked(PersonId by, Sight sight, String subject, Collection<PersonId> whose);

    /** Keeps that somebody looks at a list of many people, as one look that concerns everybody. */
    void lookedAtMany(PersonId by, Sight sight, String subject);

    /** Who looked at a person's record, latest first; looks at lists of many are among them. */
    List<Look> at(PersonId whose, int atMost);

    /** The latest looks that fit, latest first; starts after a look when one is given. */
    List<Look> latest(@Nullable PersonId viewer, @Nullable PersonId whose, @Nullable Look after, int atMost);

    /**
     * One look.
     *
     * @param whose null for a list of many, and for a thing that names nobody
     * @param at the first look within its hour
     */
    record Look(UUID id, PersonId viewer, @Nullable PersonId whose, Sight sight, String subject, Instant at) {}
}
