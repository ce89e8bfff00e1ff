package org.standclear.signoff.records;

import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.check.StoredAnswer;
import org.standclear.people.People;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.live.LiveEvents;
import org.standclear.platform.time.LabTime;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.Part;
import org.standclear.signoff.Release;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.Signature;
import org.standclear.signoff.Turn;
import org.standclear.signoff.Waiver;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Writes what happens at the bench into the lab's record. Values read blind stay out until the release. */
@Component
class SignoffTrail {

    static final String TURN_OVER = "signoff.turn-over";

    private final Trail trail;
    private final LiveEvents live;
    private final Labs labs;
    private final People people;
    private final LabTime labTime;

    SignoffTrail(Trail trail, LiveEvents live, Labs labs, People people, LabTime labTime) {
        this.trail = trail;
        this.live = live;
        this.labs = labs;
        this.people = people;
        this.labTime = labTime;
    }

    void attached(Booking booking, PersonId by, String what) {
        append("signoff.program-attached", booking, by, people.printedName(by) + " attached " + what + ".");
    }

    void checked(Booking booking, StoredAnswer answer, String line) {
        trail.append(entry("signoff.checked", booking, null, "Checked for the booking: " + line)
                .with("answer", answer.id())
                .with("cell-version", answer.cellVersion())
                .with("revision", answer.revision()));
    }

    void checkLapsed(Booking booking, String because) {
        live.cellChanged(booking.cell());
        append("signoff.check-lapsed", booking, null, "The check lapsed: " + because);
    }

    void sheetVoid(Sheet sheet, String because) {
        live.cellChanged(sheet.cell());
        trail.append(entry(
                        "signoff.list-void",
                        sheet.booking(),
                        null,
                        "The " + sheet.list().words() + " is void: " + because)
                .with("round", sheet.round()));
    }

    void ready(Booking booking) {
        append("signoff.ready", booking, null, "Ready: the session list is signed by operator and e-stop attendant.");
    }

    void signed(Sheet sheet, Signature signature) {
        live.cellChanged(sheet.cell());
        trail.append(entry(
                        "signoff.signed",
                        sheet.booking(),
                        signature.signer(),
                        signature.printedName() + " signed the " + sheet.list().words() + " as "
                                + signature.part().words() + ".")
                .with("method", signature.method().words())
                .with("round", sheet.round())
                .with("signature", signature.id())
                .with("statement-sha256", signature.statementSha256()));
    }

    void disagreed(Sheet sheet, Part part, int item, @Nullable PersonId by) {
        trail.append(entry(
                        "signoff.answer-disagreed",
                        sheet.booking(),
                        by,
                        "Item " + item + " of the " + sheet.list().words() + ": the answer of the " + part.words()
                                + " did not agree; it is read again.")
                .with("round", sheet.round()));
    }

    void notReleased(Sheet sheet, PersonId by, String says) {
        live.cellChanged(sheet.cell());
        append("signoff.not-released", sheet.booking(), by, "Not released: " + says);
    }

    void released(Release release) {
        live.cellChanged(release.cell());
        trail.append(entry(
                        "signoff.released",
                        release.booking(),
                        release.releaser(),
                        people.printedName(release.releaser()) + " released the run until "
                                + labTime.time(release.startBy()) + ", code " + release.code() + ".")
                .with("attendant", release.attendant())
                .with("cell", release.cell())
                .with("cell-version", release.cellVersion())
                .with("declaration-sha256", release.declarationSha256())
                .with("first-run", release.firstRun())
                .with("operator", release.operator())
                .with("program-sha256", release.programSha256())
                .with("release", release.id())
                .with("start-by", release.startBy())
                .with("tool", release.tool())
                .with("window-end", release.windowEnd()));
    }

    void releaseLapsed(Booking booking, Release release, LapseRule rule, String because, @Nullable PersonId by) {
        live.cellChanged(release.cell());
        trail.append(
                entry("signoff.release-lapsed", booking, by, "The release lapsed, " + rule.words() + ": " + because)
                        .with("release", release.id())
                        .with("rule", rule.code()));
    }

    void suspended(Booking booking, Release release, LapseRule rule, String because) {
        live.cellChanged(release.cell());
        trail.append(entry(
                        "signoff.release-suspended",
                        booking,
                        null,
                        "The release waits for another e-stop attendant, " + rule.words() + ": " + because)
                .with("release", release.id())
                .with("rule", rule.code()));
    }

    void turnOver(Booking booking, Release release, Turn turn) {
        live.cellChanged(release.cell());
        trail.append(entry(
                        TURN_OVER,
                        booking,
                        null,
                        over(people.printedName(release.attendant()), turn)
                                + " and the run goes on: somebody else takes it.")
                .with("attendant", release.attendant())
                .with("release", release.id()));
    }

    private String over(String name, Turn turn) {
        return turn.told()
                ? "The turn of " + name + " at the e-stop was over at " + labTime.time(turn.until())
                : "How long " + name + " has been at the e-stop can no longer be told, because the clock was set back,";
    }

    void askedToTakeOver(Booking booking, PersonId next, PersonId by) {
        live.cellChanged(booking.cell());
        append("signoff.handover-asked", booking, by, people.printedName(next) + " was asked to take over the e-stop.");
    }

    void handedOver(Booking booking, Release release, PersonId before, PersonId next) {
        trail.append(entry(
                        "signoff.handed-over",
                        booking,
                        next,
                        people.printedName(next) + " took over the e-stop from " + people.printedName(before) + ".")
                .with("from", before)
                .with("release", release.id()));
    }

    void waived(Waiver waiver) {
        trail.append(entry(
                        "signoff.waived",
                        waiver.booking(),
                        waiver.givenBy(),
                        people.printedName(waiver.givenBy()) + " waived " + String.join(", ", waiver.checks())
                                + " for one run, until " + labTime.time(waiver.expiresAt()) + ": " + waiver.reason()
                                + waiver.confirmed())
                .with("answer", waiver.answer())
                .with("expires-at", waiver.expiresAt())
                .with("waiver", waiver.id()));
    }

    void waiverTakenBack(Waiver waiver, Waiver.TakenBack taken) {
        trail.append(entry(
                        "signoff.waiver-taken-back",
                        waiver.booking(),
                        taken.by(),
                        people.printedName(taken.by()) + " took the waiver of " + String.join(", ", waiver.checks())
                                + " back: " + taken.reason())
                .with("waiver", waiver.id()));
    }

    void waiverUsed(Waiver waiver, Release release, PersonId by) {
        trail.append(entry("signoff.waiver-used", release.booking(), by, "The waiver is used up by this start.")
                .with("release", release.id())
                .with("waiver", waiver.id()));
    }

    void started(Release release, PersonId by) {
        trail.append(entry("signoff.release-used", release.booking(), by, "The release was used for a start.")
                .with("release", release.id()));
    }

    private void append(String kind, Object subject, @Nullable PersonId actor, String words) {
        trail.append(entry(kind, subject, actor, words));
    }

    private TrailEntry entry(String kind, Object subject, @Nullable PersonId actor, String words) {
        Object id = subject instanceof Booking booking ? booking.id() : subject;
        return TrailEntry.of(labs.theLab().id(), kind, id, actor, words);
    }
}
