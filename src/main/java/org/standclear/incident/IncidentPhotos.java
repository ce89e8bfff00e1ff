package org.standclear.incident;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;

/** Photos of an incident; kept as pictures made anew, without anything that the file said beside the picture. */
public interface IncidentPhotos {

    /** How many one incident may have. */
    int MOST = 12;

    /** Takes a photo in, or says why it is none. */
    IncidentOutcome add(IncidentId incident, byte[] file, String caption, PersonId by);

    /** The photos of an incident, first to last. */
    List<Photo> of(IncidentId incident);

    /** The JPEG of a photo, if it belongs to the incident. */
    Optional<byte[]> jpeg(IncidentId incident, UUID photo);

    /** A photo without its bytes. */
    record Photo(UUID id, int width, int height, String sha256, String caption, PersonId addedBy, Instant addedAt) {}
}
