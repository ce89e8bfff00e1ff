package org.standclear.retention;

import java.time.Period;
import org.standclear.platform.retention.RecordKind;

/**
 * What holds until an administrator changes it, with where it comes from. Sources were read in public texts of the
 * regulations; they bind employers and schools of one country, are examples here, and the college's own rules decide.
 */
public final class DefaultTimes {

    private DefaultTimes() {}

    /** How long. */
    public static KeepingTime of(RecordKind kind) {
        return switch (kind) {
            case MESSAGES -> KeepingTime.years(1);
            case ADDRESSES -> new KeepingTime(Period.ofDays(30), false);
            case ACCOUNTS -> KeepingTime.yearsAfterTheYear(5);
            case EXCUSES, ROSTERS -> KeepingTime.years(1);
            case DUTY_PERIODS, PROGRAMS -> KeepingTime.years(3);
            case AUTHORISATIONS, PHOTOS, INCIDENTS, CLOSINGS, RESTARTS -> KeepingTime.yearsAfterTheYear(5);
            case RISK_REVIEWS -> KeepingTime.yearsAfterTheYear(10);
            case RUN_WORDS, TAG_REASONS, LAPSES, WAIVERS, PAPER_REMARKS, EXCEPTION_REMARKS, QUESTIONS ->
                KeepingTime.yearsAfterTheYear(5);
            case LOOKS -> KeepingTime.yearsAfterTheYear(5);
            case MEDICAL_NOTES, MEDICAL_VIEWS, MEDICAL_LOOKS -> KeepingTime.years(30);
        };
    }

    /** Where that comes from. */
    public static String source(RecordKind kind) {
        return switch (kind) {
            case INCIDENTS, PHOTOS, CLOSINGS, RESTARTS ->
                "29 CFR 1904.33(a): logs and incident reports of employees are saved for five years following the end of the "
                        + "calendar year that they cover. Students are not employees; the same time is used for them.";
            case MEDICAL_NOTES ->
                "29 CFR 1910.1020(d)(1)(i): medical records of employees, duration of employment and thirty years; records of "
                        + "first aid for minor things have no time there. The program does not know when an employment ends: "
                        + "place a legal hold where thirty years from the closing are too short.";
            case MEDICAL_VIEWS, MEDICAL_LOOKS ->
                "As long as the medical notes themselves (29 CFR 1910.1020(d)(1)(i)), after 34 CFR 99.32(a)(2): the record of "
                        + "who asked stays as long as what was asked for. Kept longer while any note of the incident is.";
            case LOOKS ->
                "34 CFR 99.32(a)(2): the record of who asked for an education record stays as long as that record; here as "
                        + "long as the longest of the others but medical notes; looks at those have lines of their own.";
            case ACCOUNTS, AUTHORISATIONS ->
                "The college’s own: as long as the stories of incidents (29 CFR 1904.33(a)). Kept longer while an incident in "
                        + "which the person is named still has its story, photos or medical notes.";
            case MESSAGES, EXCUSES, ROSTERS ->
                "Common practice: one year, so that the grades of a term can be questioned.";
            case ADDRESSES -> "The college’s own: a month, for what is still under way.";
            case PROGRAMS ->
                "The college’s own: the length of a course of study. Kept longer while a booking of the last year names it, or "
                        + "an incident has frozen it.";
            case DUTY_PERIODS -> "The college’s own.";
            case RISK_REVIEWS ->
                "The college’s own: twice as long as the stories of incidents. An outcome says why the cell is as it is, and a "
                        + "cell outlives the incident.";
            case RUN_WORDS, TAG_REASONS, LAPSES ->
                "The college’s own: as long as the stories of incidents (29 CFR 1904.33(a)), which they help to understand. "
                        + "Words that an incident has frozen stay with its evidence.";
            case WAIVERS, PAPER_REMARKS ->
                "The college’s own: as long as the stories of incidents (29 CFR 1904.33(a)). A waiver’s reason says why a run "
                        + "went on that the check did not pass, and a card from paper is all there is of a run; what was signed "
                        + "of them stays as it was signed.";
            case EXCEPTION_REMARKS ->
                "The college’s own: as long as what was typed into the run log, which these remarks are about.";
            case QUESTIONS ->
                "The college’s own, after 34 CFR 99.21(c): what somebody adds to a contested part of a record stays as long as "
                        + "that part (from memory); here as long as the longest of them but medical notes.";
        };
    }
}
