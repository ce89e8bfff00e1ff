package org.standclear.incident.rules;

import java.util.List;

/**
 * What to ask about an incident that may have to be reported to an authority. The list never decides: whether, to whom and
 * by when is for the college's responsible person.
 */
public final class AuthorityQuestions {

    private AuthorityQuestions() {}

    /** The questions, in the order in which time runs out. */
    public static List<String> list() {
        return List.of(
                "Has the emergency number been called, and has the college's responsible person been told? When, by whom?",
                "Did anybody die? (In the United States, 29 CFR 1904.39 names 8 hours for employees; local codes may name less.)",
                "Was anybody taken into hospital, was there an amputation or the loss of an eye? (In the United States, 29 CFR"
                        + " 1904.39 names 24 hours for employees; local codes may name less.)",
                "Was the person an employee, a student, a visitor or a contractor? The duties differ, and so does who"
                        + " has them.",
                "Which authority asks to be told where the lab stands: for work, for schools, for machinery, for fire?",
                "Does the insurer, the owner of the building or the college's board have to be told, and by when?",
                "Is the place left as it was, and does anybody have to release it?",
                "Who has told the family, and who speaks for the college?");
    }
}
