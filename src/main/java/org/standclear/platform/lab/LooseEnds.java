package org.standclear.platform.lab;

import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.security.Role;

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
     * @param parts which ones, as far as an administrator may know who can open none of their pages: no names of people who
     *     book, no words of a report
     * @param actors who can settle it
     * @param href its page
     * @param forAdministrators whether an administrator may open that page; if not, the lab's instructors may
     */
    record LooseEnd(String says, List<String> parts, Set<Role> actors, String href, boolean forAdministrators) {

        /** So many have a line of their own. */
        public static final int PARTS_SHOWN = 10;

        public LooseEnd {
            parts = List.copyOf(parts);
            actors = Collections.unmodifiableSet(EnumSet.copyOf(actors));
        }

        /** "1 booking" or "3 bookings". */
        public static String count(int number, String one, String more) {
            return number + " " + (number == 1 ? one : more);
        }
    }
}
