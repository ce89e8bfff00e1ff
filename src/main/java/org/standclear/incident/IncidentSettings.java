package org.standclear.incident;

/**
 * The numbers of incidents; an instructor changes them with a reason, and every change is kept.
 *
 * @param contactFormHours hours until the form of a contact or of damage is due
 * @param injuryFormHours hours until the form of an injury is due, which is told at once
 * @param effectCheckDays days after an action was done on which somebody looks whether it helped
 */
public record IncidentSettings(int contactFormHours, int injuryFormHours, int effectCheckDays) {

    /** What holds until somebody changes it. */
    public static final IncidentSettings DEFAULTS = new IncidentSettings(4, 24, 30);

    public IncidentSettings {
        require(contactFormHours >= 1 && contactFormHours <= 24, "the form of a contact is due after 1 to 24 hours");
        require(injuryFormHours >= 1 && injuryFormHours <= 72, "the form of an injury is due after 1 to 72 hours");
        require(effectCheckDays >= 7 && effectCheckDays <= 365, "the effect is looked at after 7 to 365 days");
    }

    private static void require(boolean holds, String says) {
        if (!holds) {
            throw new IllegalArgumentException(says);
        }
    }
}
