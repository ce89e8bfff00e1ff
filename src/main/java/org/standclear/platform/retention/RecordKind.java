package org.standclear.platform.retention;

import java.util.Arrays;
import java.util.Optional;

/** Kinds of records that have an end, with the event that starts their clock and what happens when it has run. */
public enum RecordKind {
    MESSAGES("Messages and their e-mails", "the message was written", "Deleted."),
    ADDRESSES("E-mail addresses of people who left", "the account was closed", "Deleted."),
    ACCOUNTS(
            "Accounts of people who left",
            "the account was closed",
            "The name is replaced by a pseudonym everywhere it is read from the account; sign-in name, password, PIN, tokens "
                    + "and arrangements are taken out. Runs, bookings and their counts stay."),
    EXCUSES("What students wrote about lost bookings", "the slot ended", "The words are deleted; the booking stays."),
    PROGRAMS(
            "Texts of programs",
            "the text was uploaded last",
            "The text is taken out; titles, revisions, SHA-256, declarations and the answers of the check stay, and with these "
                    + "the steps that they speak of."),
    DUTY_PERIODS("Duty plan", "the duty ended", "Deleted."),
    AUTHORISATIONS(
            "Reasons in authorisations",
            "the authorisation ended",
            "The reasons are taken out; who was authorised for what, and when, stays."),
    ROSTERS(
            "Roster files that were read in",
            "the roster was applied, or read in",
            "The lines with names and addresses are deleted; the file’s name and fingerprint stay."),
    LOOKS("Access log", "the look", "Deleted."),
    INCIDENTS(
            "Stories of incidents",
            "the incident was closed",
            "The reporter and the words of the report, its form, its answers, its causes and its actions are taken out; "
                    + "number, class, severity, cell and dates stay, and of causes and actions their branch, level, owner, "
                    + "dates and effect, so that the counts of every term stay what they were."),
    MEDICAL_NOTES("Medical notes", "the incident was closed", "Deleted."),
    MEDICAL_VIEWS("Who opened medical notes, as the incident tells it", "the incident was closed", "Deleted."),
    MEDICAL_LOOKS("Who opened medical notes, in the access log", "the look", "Deleted."),
    PHOTOS("Photos of incidents", "the incident was closed", "Deleted."),
    CLOSINGS(
            "Why incidents were closed",
            "the incident was closed",
            "The words are taken out, and what the reporter was told then; who closed it, and when, stays."),
    RESTARTS(
            "Why restarts after incidents were approved",
            "the incident was closed",
            "The words are taken out; who approved, and when, stays."),
    RISK_REVIEWS(
            "Outcomes of reviews of risk assessments after incidents",
            "the incident was closed",
            "The outcome’s words are taken out; who noted the review, the days and the cell’s version stay."),
    RUN_WORDS(
            "What was written in the run log",
            "it was written",
            "What was typed about causes of stops and in corrections is taken out, and so are the names in sentences about "
                    + "handovers and credited minutes; what kind of event it was, its code, who logged it and when stay, and "
                    + "so do the answers of close-outs, which nobody types."),
    TAG_REASONS(
            "Reasons of holds, tags and lockouts",
            "it came off",
            "The reasons for hanging it and for taking it off are taken out; the cell, what hung there, by whom, and when, "
                    + "stay."),
    WAIVERS(
            "Why waivers were given and taken back",
            "the waiver ended",
            "The reasons are taken out; which checks were waived, for which booking, by whom, when, and whether it was used, stay."),
    LAPSES(
            "Why checks, lists and releases lapsed",
            "it lapsed",
            "The words are taken out, with those of the release, the handover and the list that they speak of; what lapsed, by "
                    + "which rule, when and for which booking stays."),
    PAPER_REMARKS(
            "What cards from paper say went on",
            "the card was signed on paper",
            "The remark is taken out; who was there, what was loaded and what was read at the display stay."),
    EXCEPTION_REMARKS(
            "Remarks beside the week’s exceptions",
            "the lines were signed",
            "The remark is taken out; the lines, who signed them, when, and the SHA-256 of what was read stay."),
    QUESTIONS(
            "Questions to own records, and their answers",
            "the question was answered",
            "Question and answer are deleted.");

    private final String words;
    private final String clockStart;
    private final String atTheEnd;

    RecordKind(String words, String clockStart, String atTheEnd) {
        this.words = words;
        this.clockStart = clockStart;
        this.atTheEnd = atTheEnd;
    }

    /** The kind of that name, as addresses carry it. */
    public static Optional<RecordKind> named(String name) {
        return Arrays.stream(values()).filter(kind -> kind.name().equals(name)).findFirst();
    }

    /** It as people say it. */
    public String words() {
        return words;
    }

    /** What happened when the clock started. */
    public String clockStart() {
        return clockStart;
    }

    /** What happens at the end of the clock. */
    public String atTheEnd() {
        return atTheEnd;
    }
}
