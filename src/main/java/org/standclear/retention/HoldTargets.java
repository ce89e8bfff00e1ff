package org.standclear.retention;

import java.util.Optional;
import java.util.UUID;
import org.standclear.platform.retention.Concern.About;

/** Finds what a hold is placed on, as people name it, and says it in words. */
public interface HoldTargets {

    /** By sign-in name (people), number (incidents), cell and time (runs) or id (all of them); empty when there is none. */
    Optional<UUID> find(About about, String named);

    /** It in words: "Noor Candlewick (noor)", "incident 12", "run on Avocet, Thu 26 Nov 2026 14:07". */
    String words(About about, UUID id);
}
