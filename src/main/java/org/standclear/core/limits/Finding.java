package org.standclear.core.limits;

import org.standclear.core.cell.Obligation;

/** What one rule makes of what it found. */
public sealed interface Finding {

    /** What it found. */
    Details details();

    /** The outcome in one word, as answers write it. */
    String outcome();

    /** Whether the program is not within limits because of it. */
    boolean blocks();

    /** The limit is kept. */
    record Within(Details details) implements Finding {
        @Override
        public String outcome() {
            return "within";
        }

        @Override
        public boolean blocks() {
            return false;
        }
    }

    /** A required limit is not kept. */
    record Outside(Details details) implements Finding {
        @Override
        public String outcome() {
            return "outside";
        }

        @Override
        public boolean blocks() {
            return true;
        }
    }

    /** Something is missing that the rule needs; it never passes, and blocks when the limit is required. */
    record NotCheckable(Details details, Obligation rule) implements Finding {
        @Override
        public String outcome() {
            return "not-checkable";
        }

        @Override
        public boolean blocks() {
            return rule == Obligation.REQUIRED;
        }
    }

    /** An advised limit is not kept; it stays on the release card. */
    record Caution(Details details) implements Finding {
        @Override
        public String outcome() {
            return "caution";
        }

        @Override
        public boolean blocks() {
            return false;
        }
    }

    /** Something worth knowing. */
    record Notice(Details details) implements Finding {
        @Override
        public String outcome() {
            return "notice";
        }

        @Override
        public boolean blocks() {
            return false;
        }
    }

    /** A limit that is not kept: outside when required, a caution when advised. */
    static Finding notKept(Obligation rule, Details details) {
        return rule == Obligation.REQUIRED ? new Outside(details) : new Caution(details);
    }

    /** A required limit that cannot be checked. */
    static Finding notCheckable(Details details) {
        return new NotCheckable(details, Obligation.REQUIRED);
    }
}
