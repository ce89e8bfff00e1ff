package org.standclear.people;

import org.standclear.platform.ids.PersonId;

/** Personal signing PINs for the shared bench screen: stored hashed, throttled, never shown. */
public interface SigningPins {

    /**
     * Compares a typed PIN. Counts wrong tries per person in a transaction of its own, so that rolling back the act
     * does not forget the try.
     */
    Outcome check(PersonId person, String pin);

    /** Gives the person a PIN of their own choice: six digits that do not follow a pattern. */
    Choice choose(PersonId person, String pin);

    /** Keeps a PIN that the application's password encoder hashed already; the rules for PINs are not asked. */
    void keepHashed(PersonId person, String hash);

    /** Whether the person has chosen a PIN. */
    boolean isSet(PersonId person);

    /** What came of choosing. */
    sealed interface Choice {

        /** It is stored. */
        record Chosen() implements Choice {}

        /** The PIN before stays; says what to choose instead. */
        record Refused(String says) implements Choice {}
    }

    /** What the comparison said. */
    sealed interface Outcome {

        /** The PIN is the person's. */
        record Right() implements Outcome {}

        /** It is not; so many tries are left before a pause. */
        record Wrong(int triesLeft) implements Outcome {}

        /** Too many wrong tries; no PIN is compared before that instant. */
        record Paused(java.time.Instant until) implements Outcome {}

        /** The person has not chosen a PIN yet (they do so on their own page, signed in). */
        record NotSet() implements Outcome {}
    }
}
