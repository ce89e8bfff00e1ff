package org.standclear.retention;

import java.util.Optional;
import java.util.UUID;
import org.standclear.platform.retention.Concern.About;

/** Finds what a hold is placed on, as people name it, and says it in words. */
public interface HoldTargets {

    /** By sign-in name (people), number (incidents) or id (all of them); empty when there is none. */
    Optional<UUID> find(About about, String named);

    /** It in words: "Noor Candlewick", "incident 12", "run on Avocet". */
    String words(About about, UUID id);
}
