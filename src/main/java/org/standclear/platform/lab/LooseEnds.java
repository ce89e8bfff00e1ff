package org.standclear.platform.lab;

import java.util.List;
import org.standclear.platform.ids.LabId;

/**
 * What of a room has to be settled before its lab is taken out of use; a room that has such things answers in one bean, with
 * the rows of that lab alone, whatever lab the present work is for.
 */
public interface LooseEnds {

    /** Those of the lab, each as a line. */
    List<LooseEnd> of(LabId lab);

    /**
     * One line: what it is, and where it is settled.
     *
     * @param says a sentence with how many there are and who settles them
     * @param href its page
     * @param forAdministrators whether an administrator may open that page; if not, the lab's instructors may
     */
    record LooseEnd(String says, String href, boolean forAdministrators) {

        /** "1 booking" or "3 bookings". */
        public static String count(int number, String one, String more) {
            return number + " " + (number == 1 ? one : more);
        }
    }
}
