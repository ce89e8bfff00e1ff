package org.standclear.people;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.PersonId;

/** Personal tokens, by which a person's own programs call the application: shown once, kept hashed, revocable. */
public interface PersonalTokens {

    /** Makes a token; its text is in the answer and nowhere else. */
    Created create(PersonId person, String name, int days);

    /** The person's tokens, latest first; revoked and expired ones too. */
    List<PersonalToken> of(PersonId person);

    /** Ends a token of the person; false when the person has no such token that still counts. */
    boolean revoke(PersonId person, UUID token);

    /**
     * A token as its owner sees it afterwards.
     *
     * @param prefix its readable beginning
     * @param lastUsedAt to the minute; null while it was not used
     */
    record PersonalToken(
            UUID id,
            String name,
            String prefix,
            Instant createdAt,
            Instant expiresAt,
            @Nullable Instant lastUsedAt,
            @Nullable Instant revokedAt) {

        /** Whether it still lets its owner in. */
        public boolean countsAt(Instant now) {
            return revokedAt == null && now.isBefore(expiresAt);
        }
    }

    /** What came of making one. */
    sealed interface Created {

        /** It is kept; the text is to be shown once. */
        record Kept(PersonalToken token, String text) implements Created {}

        /** It was not made; says why, and with which field. */
        record Refused(String field, String says) implements Created {}
    }
}
