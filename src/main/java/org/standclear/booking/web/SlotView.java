package org.standclear.booking.web;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The booking form, or the answer why not.
 *
 * @param cellName the cell's name
 * @param when "Thu 12 Mar, 12:07-12:37"
 * @param refusal why not; null while nothing is against it
 * @param errors the refusal by field, when the form can mend it
 * @param open whether the form is shown: not when the slot itself is gone
 * @param nextFree other slots; empty when none or not needed
 * @param back the Book page of that day
 */
record SlotView(
        String cellName,
        String when,
        SlotForm form,
        Map<String, String> attendants,
        Map<String, String> purposes,
        @Nullable String refusal,
        Map<String, String> errors,
        boolean open,
        List<SlotLink> nextFree,
        String back) {

    /** Another slot one could take. */
    record SlotLink(String words, String href) {}
}
