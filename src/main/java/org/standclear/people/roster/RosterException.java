package org.standclear.people.roster;

/** A roster cannot be read at all; the message is for whoever sent it. */
final class RosterException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    RosterException(String says) {
        super(says);
    }
}
