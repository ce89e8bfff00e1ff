package org.standclear.people;

import java.util.Optional;
import org.standclear.platform.ids.PersonId;

/**
 * What the lab does for a person: effects, never why. For lab staff, who have to do it, and for the person; callers see to
 * that, and nothing of it goes into the record's words.
 */
public interface Accommodations {

    /** What holds for the person now; empty when nothing does. */
    Optional<Accommodation> of(PersonId person);

    /** Puts others in force, or none; the caller has checked that somebody of the lab's staff asks. */
    Optional<String> set(PersonId person, Accommodation wanted, PersonId by);

    /**
     * The effects.
     *
     * @param slotMinutes the least length of the person's slots; 0 for the usual one
     * @param lowerBench a bench to work at sitting
     * @param helper a helper from the lab is there
     */
    record Accommodation(int slotMinutes, boolean lowerBench, boolean helper) {

        /** Nothing. */
        public static final Accommodation NONE = new Accommodation(0, false, false);

        /** In words, for lab staff and the person: "45 min slots, lower bench". */
        public String words() {
            StringBuilder words = new StringBuilder();
            add(words, slotMinutes > 0, slotMinutes + " min slots");
            add(words, lowerBench, "lower bench");
            add(words, helper, "a helper");
            return words.toString();
        }

        private static void add(StringBuilder words, boolean holds, String effect) {
            if (holds) {
                words.append(words.isEmpty() ? "" : ", ").append(effect);
            }
        }
    }
}
