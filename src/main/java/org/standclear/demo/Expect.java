package org.standclear.demo;

/** Stops the loading where an act of the script is refused: then the script is wrong, and the start says where. */
final class Expect {

    private Expect() {}

    /** The outcome as the wanted case. */
    static <T> T that(Class<T> wanted, Object outcome, String act) {
        if (wanted.isInstance(outcome)) {
            return wanted.cast(outcome);
        }
        throw new IllegalStateException("the demo's script: " + act + " came out as " + outcome);
    }
}
