package org.standclear.retention;

import org.standclear.platform.retention.RecordKind;

/**
 * How long a kind of record is kept in a lab.
 *
 * @param number counts the changes; 0 is the program's default
 */
public record KeepingRule(RecordKind kind, int number, KeepingTime time) {

    /** It in one line, as the disposal log keeps it. */
    public String words() {
        return time.words() + (number == 0 ? " (default)" : " (change " + number + ")");
    }
}
