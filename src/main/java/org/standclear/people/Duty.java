package org.standclear.people;

/** What a person is authorised for at a cell. */
public enum Duty {
    OPERATOR("operator"),
    ATTENDANT("e-stop attendant");

    private final String words;

    Duty(String words) {
        this.words = words;
    }

    /** The duty as people say it. */
    public String words() {
        return words;
    }
}
