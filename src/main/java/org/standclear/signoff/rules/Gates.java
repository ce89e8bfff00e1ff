package org.standclear.signoff.rules;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.standclear.cell.CellState;
import org.standclear.check.StoredAnswer;
import org.standclear.people.Person;
import org.standclear.signoff.Obstacle;

/** Everything that must hold before a release, in the order in which people can mend it. */
public final class Gates {

    /** The code of the gate that nobody can open; whoever would sign for nothing is told by it. */
    public static final String SLOT_OVER = "slot-over";

    /** One gate. */
    public record Gate(String name, Function<GateQuestion, Stream<Obstacle>> asks) {}

    /** All gates; a release passes every one of them, in one transaction, under locks. */
    public static final List<Gate> ALL = List.of(
            new Gate("time left in the slot", Gates::slotLeft),
            new Gate("cell", question -> question.cellObstacles().stream()),
            new Gate("program within limits on the cell's version", Gates::program),
            new Gate("e-stop attendant named", Gates::attendant),
            new Gate("operator authorised", Gates::operatorAuthorised),
            new Gate("attendant authorised", Gates::attendantAuthorised),
            new Gate("restricted cell", Gates::restricted),
            new Gate("one person, one e-stop", Gates::oneStop),
            new Gate("one operator, one run", Gates::oneRun),
            new Gate("staff on duty", Gates::staff),
            new Gate("previous run closed out", Gates::closedOut));

    private Gates() {}

    /** What stands in the way; empty when every gate is open. */
    public static List<Obstacle> ask(GateQuestion question) {
        return ALL.stream().flatMap(gate -> gate.asks().apply(question)).toList();
    }

    private static Stream<Obstacle> slotLeft(GateQuestion question) {
        return question.slotOver() == null
                ? Stream.empty()
                : obstacle(
                        SLOT_OVER, question.slotOver(), question.operator().printedName() + " can book another slot.");
    }

    private static Stream<Obstacle> program(GateQuestion question) {
        if (question.booking().revision() == null) {
            return obstacle(
                    "no-program",
                    "No program is attached to the booking.",
                    question.operator().printedName() + " can attach one.");
        }
        StoredAnswer answer = question.answer();
        boolean within = answer != null
                && (answer.verdict() == StoredAnswer.Verdict.WITHIN || question.waiver() != null)
                && answer.cellVersion() == question.cell().currentVersion();
        if (within && !question.answerInForce()) {
            return obstacle(
                    "limits-changed",
                    "The limits or the rules of the check changed since the program was checked.",
                    "It is checked anew by itself; look again.");
        }
        return within
                ? Stream.empty()
                : obstacle(
                        "not-within-limits",
                        question.answerSays(),
                        question.operator().printedName() + " can mend the program and attach it anew.");
    }

    private static Stream<Obstacle> attendant(GateQuestion question) {
        Person attendant = question.attendant();
        if (attendant == null) {
            return obstacle(
                    "no-attendant",
                    "Nobody is named for the e-stop.",
                    question.operator().printedName() + " can name somebody on the booking.");
        }
        return attendant.id().equals(question.operator().id())
                ? obstacle(
                        "attendant-is-operator",
                        "The e-stop attendant must be someone else than the operator.",
                        question.operator().printedName() + " can name somebody else on the booking.")
                : Stream.empty();
    }

    private static Stream<Obstacle> operatorAuthorised(GateQuestion question) {
        return question.operatorAuthorised() ? Stream.empty() : unauthorised(question, question.operator(), "operator");
    }

    private static Stream<Obstacle> attendantAuthorised(GateQuestion question) {
        Person attendant = question.attendant();
        return attendant == null || question.attendantAuthorised()
                ? Stream.empty()
                : unauthorised(question, attendant, "attendant");
    }

    private static Stream<Obstacle> unauthorised(GateQuestion question, Person person, String duty) {
        return obstacle(
                duty + "-not-authorised",
                person.printedName() + " is not authorised as "
                        + (duty.equals("operator") ? "operator" : "e-stop attendant") + " on "
                        + question.cell().name() + " now.",
                "An instructor can grant it after the induction.");
    }

    private static Stream<Obstacle> restricted(GateQuestion question) {
        Person attendant = question.attendant();
        boolean needsStaff = question.cell().state() == CellState.RESTRICTED;
        return needsStaff && attendant != null && !attendant.isLabStaff()
                ? obstacle(
                        "attendant-not-staff",
                        question.cell().name() + " is restricted: only staff attend the e-stop.",
                        mendedBy(question.staffOnDuty(), " can attend."))
                : Stream.empty();
    }

    private static Stream<Obstacle> oneStop(GateQuestion question) {
        Person attendant = question.attendant();
        return attendant == null || question.otherStop() == null
                ? Stream.empty()
                : obstacle(
                        "attendant-elsewhere",
                        attendant.printedName() + " is at the e-stop of " + question.otherStop() + " now.",
                        "One person, one e-stop: wait for that run's end, or name somebody else.");
    }

    private static Stream<Obstacle> oneRun(GateQuestion question) {
        return question.otherRun() == null
                ? Stream.empty()
                : obstacle(
                        "operator-elsewhere",
                        question.operator().printedName() + " is in a run on " + question.otherRun() + " now.",
                        "Finish that run first.");
    }

    private static Stream<Obstacle> staff(GateQuestion question) {
        return question.staffOnDuty().isEmpty()
                ? obstacle(
                        "no-staff-on-duty",
                        "No technician or instructor is on duty now.",
                        "An instructor can change the duty plan.")
                : Stream.empty();
    }

    private static Stream<Obstacle> closedOut(GateQuestion question) {
        return question.notClosedOut().stream()
                .map(run -> new Obstacle(
                        "previous-not-closed-out",
                        "The run of " + run.operatorName() + " (" + run.slot() + ") on "
                                + question.cell().name() + " is not closed out.",
                        run.operatorName() + mendedBy(question.staffOnDuty(), "", " or ") + " can close it out."));
    }

    /** "Adaeze Lanternby or Hemi Coppergate can do it."; general words when nobody is on duty. */
    public static String mendedBy(List<Person> staff, String act) {
        return staff.isEmpty() ? "A technician or an instructor" + act : names(staff) + act;
    }

    private static String mendedBy(List<Person> staff, String act, String before) {
        return staff.isEmpty() ? act : before + names(staff) + act;
    }

    private static String names(List<Person> staff) {
        return staff.stream().map(Person::printedName).collect(Collectors.joining(" or "));
    }

    private static Stream<Obstacle> obstacle(String code, String says, String mend) {
        return Stream.of(new Obstacle(code, says, mend));
    }
}
