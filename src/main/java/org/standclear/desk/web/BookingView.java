package org.standclear.desk.web;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A booking on its own page.
 *
 * @param what "Avocet, Thu 26 Nov, 14:07-14:37"
 * @param state the state's key, with its words beside it
 * @param next what it waits for
 * @param program the program by title and revision; null when none is named
 * @param run where everything about its run is; null before the first start
 * @param cancels whether the reader may cancel it now
 * @param swaps whether the reader may name another attendant now
 * @param stepsBack whether the reader attends and may step back
 * @param names whether the reader may name another program now
 * @param waives what the link to the waiver of its check says; null when the reader gives none, or none is needed
 */
record BookingView(
        String id,
        String what,
        String state,
        String words,
        NextStep next,
        String operator,
        String attendant,
        String purpose,
        @Nullable ProgramLine program,
        @Nullable String run,
        List<Mark> marks,
        List<Happened> history,
        boolean cancels,
        boolean swaps,
        boolean stepsBack,
        boolean names,
        @Nullable String waives) {

    /**
     * The program and what the check said of it.
     *
     * @param answerHref where the answer is; null when there is none or the reader may not see it
     */
    record ProgramLine(
            String title,
            String fingerprint,
            String fingerprintEnd,
            String state,
            String answer,
            @Nullable String answerHref) {

        /** Whether there is nothing to waive. */
        boolean isWithinOrUnknown() {
            return answerHref == null || state.equals("within");
        }
    }

    /** One mark on the way of a booking: what, and whether it is done. */
    record Mark(String what, String state, String words) {}

    /** One entry of the record. */
    record Happened(String iso, String when, String words, String who) {}
}
