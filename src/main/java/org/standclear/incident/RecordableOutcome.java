package org.standclear.incident;

import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The outcomes of 29 CFR 1904.7(b)(1), as vocabulary only: students are not employees, and whether anything has to be
 * recorded or reported is decided by people and not here.
 */
public enum RecordableOutcome {
    DEATH("death", IncidentClass.REPORTABLE),
    DAYS_AWAY("days away from work or class", IncidentClass.MEDICAL_TREATMENT),
    RESTRICTED_WORK("restricted work, or moved to another task", IncidentClass.MEDICAL_TREATMENT),
    TREATMENT_BEYOND_FIRST_AID("medical treatment beyond first aid", IncidentClass.MEDICAL_TREATMENT),
    LOSS_OF_CONSCIOUSNESS("loss of consciousness", IncidentClass.MEDICAL_TREATMENT),
    SIGNIFICANT_DIAGNOSIS(
            "a significant injury or illness diagnosed by a physician or other licensed health care professional",
            IncidentClass.MEDICAL_TREATMENT),
    /** 29 CFR 1904.39(a)(2): asked about as well, since it changes who has to be told. */
    IN_PATIENT_HOSPITALISATION("taken into hospital", IncidentClass.REPORTABLE),
    /** 29 CFR 1904.39(a)(2). */
    AMPUTATION("amputation", IncidentClass.REPORTABLE),
    /** 29 CFR 1904.39(a)(2). */
    LOSS_OF_AN_EYE("loss of an eye", IncidentClass.REPORTABLE);

    private final String words;
    private final IncidentClass atLeast;

    RecordableOutcome(String words, IncidentClass atLeast) {
        this.words = words;
        this.atLeast = atLeast;
    }

    /** The outcome as people say it. */
    public String words() {
        return words;
    }

    /** The lowest class that an incident with this outcome can have. */
    public IncidentClass atLeast() {
        return atLeast;
    }

    /** The outcome as forms send it. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Reads what a form sent. */
    public static Optional<RecordableOutcome> of(@Nullable String code) {
        for (RecordableOutcome one : values()) {
            if (one.code().equals(code)) {
                return Optional.of(one);
            }
        }
        return Optional.empty();
    }
}
