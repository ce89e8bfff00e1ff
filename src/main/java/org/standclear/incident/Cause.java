package org.standclear.incident;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.PersonId;

/**
 * A cause in the tree of an incident; it stays readable when it is crossed out.
 *
 * @param parent the cause that this one explains; null at the root of its branch
 */
public record Cause(
        UUID id,
        @Nullable UUID parent,
        CauseBranch branch,
        String words,
        PersonId addedBy,
        Instant addedAt,
        boolean struck) {}
