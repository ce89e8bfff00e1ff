package org.standclear.people;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.PersonId;

/** What an assignment needs of a cell. */
public interface AssignmentNeeds {

    /** What it needs; {@link Needs#NONE} when nothing was said. */
    Needs of(AssignmentId assignment);

    /** Puts other needs in their place. The caller has checked that the person may, and that such a tool exists. */
    void set(AssignmentId assignment, Needs needs, PersonId by);

    /**
     * The needs.
     *
     * @param tool the code of the tool that its programs are written for; null for any
     * @param features what the cell has to have, in words
     */
    record Needs(@Nullable String tool, Set<String> features) {

        /** Any cell will do. */
        public static final Needs NONE = new Needs(null, Set.of());

        public Needs {
            features = Collections.unmodifiableSet(new TreeSet<>(features));
        }

        /** "the tool G-02, camera above the plate"; empty when any cell will do. */
        public String words() {
            List<String> words = new ArrayList<>();
            if (tool != null) {
                words.add("the tool " + tool);
            }
            words.addAll(features);
            return String.join(", ", words);
        }
    }
}
