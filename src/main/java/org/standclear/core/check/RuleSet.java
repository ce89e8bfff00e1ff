package org.standclear.core.check;

/** Names the rules by which an answer was found, so that stored answers can be told from those of other rules. */
public final class RuleSet {

    /** Changes whenever the same program could get another answer. */
    public static final String CURRENT = "3";

    private RuleSet() {}
}
