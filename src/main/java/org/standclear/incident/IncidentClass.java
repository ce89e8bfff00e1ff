package org.standclear.incident;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What kind of thing happened; decides whether the cell is held, what is frozen, and when the full form is due. */
public enum IncidentClass {
    OBSERVATION(0, "observation, unsafe condition", FormDue.SAME_DAY, false, false),
    NEAR_MISS(1, "near miss", FormDue.SAME_DAY, false, false),
    /** Pressing costs nothing: one tap on the bench screen says it all. */
    PRECAUTIONARY_STOP(null, "precautionary stop", FormDue.NONE, false, false),
    PROTECTIVE_STOP(2, "protective stop, or e-stop because something was going wrong", FormDue.SAME_DAY, true, false),
    CONTACT(3, "contact without injury", FormDue.SOON, true, true),
    PROPERTY_DAMAGE(4, "property damage", FormDue.SOON, true, true),
    FIRST_AID(5, "first aid", FormDue.LATER, true, true),
    MEDICAL_TREATMENT(6, "medical treatment or more than first aid", FormDue.LATER, true, true),
    REPORTABLE(7, "may have to be reported to an authority", FormDue.AT_ONCE, true, true);

    private final @Nullable Integer number;
    private final String words;
    private final FormDue formDue;
    private final boolean freezes;
    private final boolean holdsCell;

    IncidentClass(@Nullable Integer number, String words, FormDue formDue, boolean freezes, boolean holdsCell) {
        this.number = number;
        this.words = words;
        this.formDue = formDue;
        this.freezes = freezes;
        this.holdsCell = holdsCell;
    }

    /** The number in the lab's rules; null for a precautionary stop, which has none. */
    public @Nullable Integer number() {
        return number;
    }

    /** The class as people say it. */
    public String words() {
        return words;
    }

    /** "class 3, contact without injury". */
    public String label() {
        return number == null ? words : "class " + number + ", " + words;
    }

    /** Whether the evidence of the run is frozen. */
    public boolean freezesEvidence() {
        return freezes;
    }

    /** Whether the cell is held, and every check and release on it lapses. */
    public boolean holdsCell() {
        return holdsCell;
    }

    /** Whether it is told at once, in person, whatever the form says. */
    public boolean isToldAtOnce() {
        return this == FIRST_AID || this == MEDICAL_TREATMENT || this == REPORTABLE;
    }

    /** Whether the four fields of the short form are all that is asked. */
    public boolean isShortFormEnough() {
        return this == OBSERVATION || this == NEAR_MISS || this == PRECAUTIONARY_STOP;
    }

    /** When the form is due. */
    public FormDue formDue() {
        return formDue;
    }

    /** The class as forms and tables have it. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Reads what a form sent. */
    public static Optional<IncidentClass> of(@Nullable String code) {
        for (IncidentClass one : values()) {
            if (one.code().equals(code)) {
                return Optional.of(one);
            }
        }
        return Optional.empty();
    }

    /** Until when the form is to be filled in. */
    public enum FormDue {
        NONE("no form"),
        SAME_DAY("form the same day"),
        SOON("form within hours"),
        LATER("told at once, form later"),
        AT_ONCE("told and written at once");

        private final String words;

        FormDue(String words) {
            this.words = words;
        }

        /** The time as people say it. */
        public String words() {
            return words;
        }

        /** The last instant; the same day ends at midnight in the lab. Null when there is no form. */
        public @Nullable Instant after(Instant happened, ZoneId zone, IncidentSettings numbers) {
            return switch (this) {
                case NONE -> null;
                case SAME_DAY ->
                    happened.atZone(zone)
                            .toLocalDate()
                            .plusDays(1)
                            .atStartOfDay(zone)
                            .toInstant();
                case SOON -> happened.plus(Duration.ofHours(numbers.contactFormHours()));
                case LATER -> happened.plus(Duration.ofHours(numbers.injuryFormHours()));
                case AT_ONCE -> happened;
            };
        }
    }
}
