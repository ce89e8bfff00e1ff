package org.standclear.booking;

/** What became of an offer from the waiting list. */
public enum OfferState {
    OPEN("offered to you"),
    TAKEN("taken"),
    DECLINED("declined"),
    EXPIRED("run out");

    private final String words;

    OfferState(String words) {
        this.words = words;
    }

    /** The state as people say it. */
    public String words() {
        return words;
    }
}
