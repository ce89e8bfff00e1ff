package org.standclear.platform.access;

/** What somebody looked at. */
public enum Sight {
    ACCOUNT("account, courses and authorisations"),
    AUTHORISATIONS("list of everybody’s authorisations"),
    RUN("a run, with names"),
    RUN_PAPER("paper of a run, with names"),
    INCIDENT("everything about an incident"),
    MEDICAL("restricted medical part of an incident"),
    QUESTIONS("questions to a record, and their answers"),
    ROSTER("a roster file that was read in"),
    TURNS("turns, make-ups, excuses and arrangements"),
    USE("list of who had how many turns"),
    ATTENDANCE("list of a course’s turns"),
    DISPOSALS("names on a list of what is due for disposal");

    private final String words;

    Sight(String words) {
        this.words = words;
    }

    /** It as people say it. */
    public String words() {
        return words;
    }
}
