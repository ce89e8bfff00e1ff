package org.standclear.incident.records;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentOutcome;
import org.standclear.incident.IncidentPhotos;
import org.standclear.incident.IncidentState;
import org.standclear.incident.IncidentStep;
import org.standclear.incident.photos.PhotoDarkroom.Developed;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;

/** Photos in the database. The name of the file is never looked at and never kept. */
@Service
class JdbcIncidentPhotos implements IncidentPhotos {

    private final JdbcClient jdbc;
    private final IncidentRows incidents;
    private final Steps steps;

    JdbcIncidentPhotos(JdbcClient jdbc, IncidentRows incidents, Steps steps) {
        this.jdbc = jdbc;
        this.incidents = incidents;
        this.steps = steps;
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<String> whyNoMore(IncidentId id) {
        return whyNoMore(incidents.find(id).orElseThrow());
    }

    private Optional<String> whyNoMore(Incident incident) {
        if (incident.state() == IncidentState.CLOSED) {
            return Optional.of("The incident is closed; no more photos are taken. Tell the instructor in person.");
        }
        return of(incident.id()).size() >= MOST
                ? Optional.of("There are " + MOST + " photos already, no more are taken.")
                : Optional.empty();
    }

    @Override
    @Transactional
    public IncidentOutcome add(IncidentId id, Developed.Photo photo, String caption, PersonId by) {
        Incident incident = incidents.lock(id).orElseThrow();
        Optional<String> refusal = whyNoMore(incident);
        if (refusal.isPresent()) {
            return new IncidentOutcome.Refused("photo", refusal.get());
        }
        String sha256 = Sha256.of(photo.jpeg());
        jdbc.sql("""
                insert into incident_photos (id, incident_id, bytes, sha256, width_px, height_px, caption, added_by,
                    added_at)
                values (:id, :incident, :bytes, :sha256, :width, :height, :caption, :by, :at)""")
                .param("id", Id.newValue())
                .param("incident", id.value())
                .param("bytes", photo.jpeg())
                .param("sha256", sha256)
                .param("width", photo.width())
                .param("height", photo.height())
                .param("caption", caption)
                .param("by", by.value())
                .param("at", SqlTime.toSql(steps.now()))
                .update();
        String words = "A photo was added, SHA-256 " + sha256 + (caption.isEmpty() ? "." : ": " + caption);
        steps.take(incident, new Steps.Taken(IncidentStep.Kind.PHOTO_ADDED, words, "", by));
        return new IncidentOutcome.Done(id);
    }

    @Override
    @Transactional(readOnly = true)
    public List<Photo> of(IncidentId incident) {
        return jdbc.sql("""
                select id, width_px, height_px, sha256, caption, added_by, added_at from incident_photos
                where incident_id = :id order by added_at, id""")
                .param("id", incident.value())
                .query((row, number) -> new Photo(
                        row.getObject("id", UUID.class),
                        row.getInt("width_px"),
                        row.getInt("height_px"),
                        row.getString("sha256"),
                        row.getString("caption"),
                        new PersonId(row.getObject("added_by", UUID.class)),
                        SqlTime.read(row, "added_at")))
                .list();
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<byte[]> jpeg(IncidentId incident, UUID photo) {
        return jdbc.sql("select bytes from incident_photos where id = :id and incident_id = :incident")
                .param("id", photo)
                .param("incident", incident.value())
                .query((row, number) -> row.getBytes("bytes"))
                .optional();
    }
}
