package org.standclear.signoff.rules;

import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.standclear.cell.CellState;
import org.standclear.platform.ids.PersonId;
import org.standclear.program.Revision;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.LapseRule.After;
import org.standclear.signoff.Release;

/** Asks the lapse rules in their order; the first that applies names the reason. */
public final class Lapses {

    private static final Map<LapseRule, Function<LapseQuestion, @Nullable String>> ASKED = Map.ofEntries(
            Map.entry(LapseRule.FILE_CHANGED, Lapses::fileChanged),
            Map.entry(LapseRule.CELL_VERSION_CHANGED, Lapses::cellVersionChanged),
            Map.entry(LapseRule.LIMITS_CHANGED, Lapses::limitsChanged),
            Map.entry(LapseRule.CELL_NOT_IN_SERVICE, Lapses::cellNotInService),
            Map.entry(LapseRule.OPERATOR_SWAPPED, Lapses::operatorSwapped),
            Map.entry(LapseRule.ATTENDANT_SWAPPED, Lapses::attendantSwapped),
            Map.entry(LapseRule.ATTENDANT_LEFT, Lapses::attendantLeft),
            Map.entry(LapseRule.TURN_OVER, LapseQuestion::turnOver),
            Map.entry(LapseRule.VALUES_CHANGED, Lapses::valuesChanged),
            Map.entry(LapseRule.ATTENDANT_NOT_STAFF, Lapses::attendantNotStaff),
            Map.entry(LapseRule.AUTHORISATION_ENDED, LapseQuestion::ended),
            Map.entry(LapseRule.RELEASER_OFF_DUTY, Lapses::releaserOffDuty),
            Map.entry(LapseRule.WINDOW_OVER, Lapses::windowOver),
            Map.entry(LapseRule.NOT_STARTED_IN_TIME, Lapses::notStartedInTime));

    private Lapses() {}

    /** A rule that applies, and why in words. */
    public record Found(LapseRule rule, String because) {}

    /** The first rule that makes the release lapse; empty while it holds, suspended or not. */
    public static Optional<Found> first(LapseQuestion question) {
        return first(question, rule -> rule.after() != After.SUSPENDED);
    }

    /** The first rule that makes the attendant's signature lapse, so that the release is suspended. */
    public static Optional<Found> suspends(LapseQuestion question) {
        return first(question, rule -> rule.after() == After.SUSPENDED);
    }

    private static Optional<Found> first(LapseQuestion question, Predicate<LapseRule> counts) {
        for (LapseRule rule : LapseRule.values()) {
            if (!counts.test(rule)) {
                continue;
            }
            Function<LapseQuestion, @Nullable String> asked = ASKED.get(rule);
            String because = asked == null ? null : asked.apply(question);
            if (because != null) {
                return Optional.of(new Found(rule, because));
            }
        }
        return Optional.empty();
    }

    /** An instructor took the waiver back that the release rests on. */
    public static Found waiverTakenBack(String reason) {
        return new Found(LapseRule.WAIVER_TAKEN_BACK, "The waiver was taken back: " + reason);
    }

    private static @Nullable String fileChanged(LapseQuestion question) {
        Release release = question.release();
        Revision attached = question.attached();
        if (attached == null) {
            return "The program was taken off the booking.";
        }
        if (!attached.id().equals(release.revision())) {
            return change(attached, release) + " Revision " + attached.number() + " is on the booking now.";
        }
        Revision newer = question.newer();
        return newer == null || newer.id().equals(release.revision())
                ? null
                : change(newer, release) + " Revision " + newer.number() + " came after the release.";
    }

    private static String change(Revision now, Release release) {
        boolean sameFile = now.sha256().equals(release.programSha256());
        return sameFile ? "The declaration changed." : "The program file changed.";
    }

    private static @Nullable String cellVersionChanged(LapseQuestion question) {
        int released = question.release().cellVersion();
        int now = question.cell().currentVersion();
        return released == now
                ? null
                : question.cell().name() + " moved from version " + released + " to version " + now + ".";
    }

    private static @Nullable String limitsChanged(LapseQuestion question) {
        return question.answerInForce() ? null : "The limits or the rules of the check changed since the release.";
    }

    private static @Nullable String cellNotInService(LapseQuestion question) {
        CellState state = question.cell().state();
        return state.mayRun()
                ? null
                : question.cell().name() + " is " + state.words() + ": "
                        + question.cell().stateReason() + ".";
    }

    private static @Nullable String operatorSwapped(LapseQuestion question) {
        return question.booking().operator().equals(question.release().operator())
                ? null
                : "Another operator is on the booking now.";
    }

    private static @Nullable String attendantSwapped(LapseQuestion question) {
        PersonId now = question.booking().attendant();
        return now == null || question.release().attendant().equals(now)
                ? null
                : "Another e-stop attendant is on the booking now; " + question.attendantName()
                        + " has not signed yet.";
    }

    private static @Nullable String attendantLeft(LapseQuestion question) {
        return question.booking().attendant() == null ? "The e-stop attendant left, and nobody else is named." : null;
    }

    private static @Nullable String valuesChanged(LapseQuestion question) {
        return question.testedSince()
                ? "A day test was made since the release: power mode, sensitivity and override are read again."
                : null;
    }

    private static @Nullable String attendantNotStaff(LapseQuestion question) {
        boolean restricted = question.cell().state() == CellState.RESTRICTED;
        return restricted && !question.attendantIsStaff()
                ? question.cell().name() + " is restricted: only staff attend the e-stop."
                : null;
    }

    private static @Nullable String releaserOffDuty(LapseQuestion question) {
        return question.releaserOnDuty() ? null : question.releaserName() + " is off duty.";
    }

    private static @Nullable String windowOver(LapseQuestion question) {
        return question.now().isBefore(question.release().windowEnd()) ? null : "The slot has ended.";
    }

    private static @Nullable String notStartedInTime(LapseQuestion question) {
        Release release = question.release();
        long minutes = java.time.Duration.between(release.issuedAt(), release.startBy())
                .toMinutes();
        return question.now().isBefore(release.startBy()) ? null : "Not started within " + minutes + " min.";
    }
}
