package org.standclear.incident;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.standclear.incident.photos.PhotoDarkroom;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;

/** Photos of an incident; kept as pictures made anew, without anything that the file said beside the picture. */
public interface IncidentPhotos {

    /** How many one incident may have. */
    int MOST = 12;

    /** Why the incident takes no photo more, so that nobody's file is looked at for nothing. */
    Optional<String> whyNoMore(IncidentId incident);

    /** Takes a photo in that was made anew before, or says why not. */
    IncidentOutcome add(IncidentId incident, PhotoDarkroom.Developed.Photo photo, String caption, PersonId by);

    /** The photos of an incident, first to last. */
    List<Photo> of(IncidentId incident);

    /** The JPEG of a photo, if it belongs to the incident. */
    Optional<byte[]> jpeg(IncidentId incident, UUID photo);

    /** A photo without its bytes. */
    record Photo(UUID id, int width, int height, String sha256, String caption, PersonId addedBy, Instant addedAt) {}
}
