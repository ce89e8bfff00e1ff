package org.standclear.program;

import java.util.List;
import java.util.Optional;

/** Says in words what changed from one revision of a program to the next. */
public interface RevisionChanges {

    /** What the revision changed; empty for a first one. */
    Optional<Since> since(Revision later);

    /** Two revisions beside each other. */
    sealed interface Since {

        /** The one before. */
        Revision before();
    }

    /**
     * They were compared.
     *
     * @param changes in the order declaration, points, steps; empty when both mean the same
     * @param more how many further ones are not said
     * @param unread whether lines that were not understood differ or may differ: nothing is said of them
     */
    record Compared(Revision before, List<Said> changes, int more, boolean unread) implements Since {

        public Compared {
            changes = List.copyOf(changes);
        }

        /** How many changes there are. */
        public int count() {
            return changes.size() + more;
        }
    }

    /**
     * One change.
     *
     * @param step the number of the later revision's step that it concerns; 0 when it concerns none
     */
    record Said(String words, int step) {}

    /** They were not; says why. */
    record NotCompared(Revision before, String why) implements Since {}
}
