package org.standclear.signoff.rules;

import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.Booking;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.signoff.Obstacle;

/** Who may release: staff on duty, who neither wrote the program nor have another part in the run. */
public final class ReleaserRules {

    /**
     * The facts about the one who wants to release.
     *
     * @param attendedBefore whether the person stood at the e-stop in an earlier part of this run
     * @param elsewhere the cell at which the person operates or attends the e-stop now; null when at none
     */
    public record Question(
            Person person,
            Booking booking,
            PersonId author,
            boolean onDuty,
            boolean attendedBefore,
            @Nullable String elsewhere,
            List<Person> staffOnDuty) {

        public Question {
            staffOnDuty = List.copyOf(staffOnDuty);
        }
    }

    /** One rule: why not, or null. */
    public record Rule(String code, Function<Question, Boolean> refuses, String says) {}

    /** All rules about the person; none of them can be waived. */
    public static final List<Rule> ALL = List.of(
            new Rule(
                    "releaser-is-operator",
                    question -> question.person().id().equals(question.booking().operator()),
                    "The operator does not release their own run."),
            new Rule(
                    "releaser-is-attendant",
                    question -> question.person().id().equals(question.booking().attendant()),
                    "Who attends the e-stop does not release that run."),
            new Rule(
                    "releaser-attended-before",
                    Question::attendedBefore,
                    "Who attended the e-stop of this run before its stop does not release it."),
            new Rule(
                    "releaser-is-author",
                    question -> question.person().id().equals(question.author()),
                    "Nobody releases a program of their own."),
            new Rule(
                    "releaser-not-staff",
                    question -> !question.person().isLabStaff()
                            || !question.person().active(),
                    "Only a technician or an instructor releases."),
            new Rule("releaser-off-duty", question -> !question.onDuty(), "Only staff on duty release."),
            new Rule(
                    "releaser-elsewhere",
                    question -> question.elsewhere() != null,
                    "Who is in a run on another cell now, at its e-stop or operating, releases none here."));

    private ReleaserRules() {}

    /** What keeps the person from releasing; empty when nothing does. */
    public static List<Obstacle> ask(Question question) {
        return ALL.stream()
                .filter(rule -> rule.refuses().apply(question))
                .map(rule -> new Obstacle(rule.code(), rule.says(), mend(question)))
                .toList();
    }

    private static String mend(Question question) {
        List<Person> others = question.staffOnDuty().stream()
                .filter(person -> !person.id().equals(question.person().id()))
                .filter(person -> !question.booking().involves(person.id()))
                .filter(person -> !person.id().equals(question.author()))
                .toList();
        return others.isEmpty()
                ? "No other technician or instructor is on duty now."
                : Gates.mendedBy(others, " can do it.");
    }
}
