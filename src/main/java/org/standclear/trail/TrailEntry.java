package org.standclear.trail;

import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;

/**
 * One thing that happened.
 *
 * @param kind feature and past tense, for example {@code booking.made}
 * @param subject the id of the thing it happened to, as text
 * @param actor who did it; null when the application did it by itself
 * @param words one sentence for people
 * @param facts names and values that an auditor would want, sorted so that they always hash alike
 */
public record TrailEntry(
        LabId lab,
        String kind,
        String subject,
        @Nullable PersonId actor,
        String words,
        SortedMap<String, String> facts) {

    public TrailEntry {
        facts = new TreeMap<>(facts);
    }

    /** An entry without facts beside its words. */
    public static TrailEntry of(LabId lab, String kind, Object subject, @Nullable PersonId actor, String words) {
        return new TrailEntry(lab, kind, subject.toString(), actor, words, new TreeMap<>());
    }

    /** The same entry with one more fact. */
    public TrailEntry with(String name, Object value) {
        SortedMap<String, String> more = new TreeMap<>(facts);
        more.put(name, String.valueOf(value));
        return new TrailEntry(lab, kind, subject, actor, words, more);
    }
}
