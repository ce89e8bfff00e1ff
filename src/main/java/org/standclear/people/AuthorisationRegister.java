package org.standclear.people;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** Grants and revokes authorisations; every act joins the running transaction and the record. */
public interface AuthorisationRegister {

    /** Grants an authorisation; one that stands already for the same person, duty and cell stays beside it. */
    Outcome grant(Grant grant);

    /** Ends an authorisation now. */
    Outcome revoke(UUID authorisation, String reason, PersonId by);

    /** The granted authorisation of that id. */
    Optional<Granted> find(UUID authorisation);

    /**
     * An authorisation somebody wants to grant.
     *
     * @param cell the one cell it is for; null means every cell
     */
    record Grant(
            PersonId person,
            Duty duty,
            @Nullable CellId cell,
            Instant validFrom,
            Instant validUntil,
            String reason,
            PersonId by) {}

    /**
     * An authorisation as the register holds it.
     *
     * @param authorisation its span ends where it was revoked
     * @param reason why it was granted
     * @param revokeReason why it was revoked; null while it stands
     */
    record Granted(
            UUID id,
            Authorisation authorisation,
            String reason,
            @Nullable PersonId revokedBy,
            @Nullable String revokeReason) {

        /** Whether somebody ended it before its time. */
        public boolean isRevoked() {
            return revokedBy != null;
        }
    }

    /** What came of it. */
    sealed interface Outcome {

        /** It is stored. */
        record Done(Granted granted) implements Outcome {}

        /** Nothing was stored; says why, and for which field: {@code person}, {@code until}, {@code reason}, ... */
        record Refused(String field, String says) implements Outcome {}
    }
}
