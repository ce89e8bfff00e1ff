package org.standclear.retention.web;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.retention.Concern.About;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.text.PlainText;
import org.standclear.retention.HoldTargets;
import org.standclear.retention.LegalHold.Target;

/**
 * A hold as it was sent.
 *
 * @param about what is held: one of {@link About}, or "KIND"
 * @param named which person, run or incident
 */
record HoldForm(
        @Nullable String formToken,
        @Nullable String about,
        @Nullable String named,
        @Nullable String kind,
        @Nullable String from,
        @Nullable String until,
        @Nullable String reason,
        @Nullable String authority) {

    static final String ON_A_KIND = "KIND";

    private static final int LONGEST_REASON = 400;
    private static final int LONGEST_AUTHORITY = 200;

    static Map<String, String> abouts() {
        Map<String, String> abouts = new LinkedHashMap<>();
        abouts.put(About.PERSON.name(), "Everything about a person");
        abouts.put(About.RUN.name(), "Everything about a run");
        abouts.put(About.INCIDENT.name(), "Everything about an incident");
        abouts.put(ON_A_KIND, "Records of a kind, from one day to another");
        return abouts;
    }

    static Map<String, String> kinds() {
        Map<String, String> kinds = new LinkedHashMap<>();
        Stream.of(RecordKind.values()).forEach(kind -> kinds.put(kind.name(), kind.words()));
        return kinds;
    }

    /** What is held; empty when it cannot be read, which then stands in the errors by field. */
    Optional<Target> read(HoldTargets targets, Map<String, String> errors) {
        check("reason", reason, LONGEST_REASON, "Write why it is held.", errors);
        check("authority", authority, LONGEST_AUTHORITY, "Write who asks for it.", errors);
        Target target = ON_A_KIND.equals(about) ? span(errors) : one(targets, errors);
        return errors.isEmpty() && target != null ? Optional.of(target) : Optional.empty();
    }

    private static void check(
            String field, @Nullable String text, int longest, String missing, Map<String, String> errors) {
        if (PlainText.check(text, longest) instanceof PlainText.Refused refused) {
            errors.put(field, text == null || text.isBlank() ? missing : refused.says());
        }
    }

    private @Nullable Target one(HoldTargets targets, Map<String, String> errors) {
        Optional<About> found = Stream.of(About.values())
                .filter(one -> one.name().equals(about))
                .findFirst();
        if (found.isEmpty()) {
            errors.put("about", "Choose what is held.");
            return null;
        }
        Optional<UUID> id = targets.find(found.get(), named == null ? "" : named.strip());
        if (id.isEmpty()) {
            errors.put(
                    "named",
                    switch (found.get()) {
                        case PERSON -> "Write the sign-in name of somebody who has, or had, an account.";
                        case RUN ->
                            "Write cell, day and time, as in: its name, then 2026-11-26 14:07; when there are several runs, open the one "
                                    + "that is meant and place the hold from there.";
                        case INCIDENT -> "Write the number of an incident.";
                    });
            return null;
        }
        return new Target.One(found.get(), id.get());
    }

    private @Nullable Target span(Map<String, String> errors) {
        Optional<RecordKind> found = RecordKind.named(kind == null ? "" : kind);
        LocalDate first = day("from", from, errors);
        LocalDate last = day("until", until, errors);
        if (found.isEmpty()) {
            errors.put("kind", "Choose a kind of record.");
            return null;
        }
        if (first != null && last != null && last.isBefore(first)) {
            errors.put("until", "The last day comes before the first.");
        }
        return new Target.Span(found.get(), first, last);
    }

    private static @Nullable LocalDate day(String field, @Nullable String text, Map<String, String> errors) {
        if (text == null || text.isBlank()) {
            return null;
        }
        try {
            return LocalDate.parse(text.strip());
        } catch (DateTimeParseException noDay) {
            errors.put(field, "Write a day like 2026-11-27, or leave it empty.");
            return null;
        }
    }

    /** A text as it is kept; only after it was read without an error. */
    static String kept(@Nullable String text) {
        return ((PlainText.Fine) PlainText.check(text, LONGEST_REASON)).text();
    }
}
