package org.standclear.simulation;

import java.util.List;
import java.util.Optional;
import org.standclear.booking.Booking;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.run.CloseOutItem;
import org.standclear.run.ResetCause;
import org.standclear.run.Run;
import org.standclear.run.RunEvent;
import org.standclear.run.RunLog.Logged;
import org.standclear.run.RunLog.Witness;
import org.standclear.signoff.Release;

/** Starts, stops, resets, passes, the end, and the close-out. */
final class RunActs {

    private final Lab lab;

    RunActs(Lab lab) {
        this.lab = lab;
    }

    String start(Booking booking) {
        Optional<Release> release = lab.doors.releases().latest(booking.id());
        String code = lab.chance.percent(94) ? release.map(Release::code).orElse("AAAA") : "AAAA";
        return says(lab.doors.log().start(booking.id(), code, operatorOrScreen(booking)));
    }

    private PersonId operatorOrScreen(Booking booking) {
        if (lab.chance.percent(5)) {
            return lab.chance.one(lab.cast.students).id();
        }
        return lab.chance.percent(50) ? booking.operator() : lab.cast.screen.id();
    }

    String pass(Booking booking) {
        return says(lab.doors.log().pass(booking.id(), operatorOrScreen(booking)));
    }

    String finish(Booking booking) {
        int passes = lab.doors.runs().of(booking.id()).map(Run::passes).orElse(0);
        return says(lab.doors.log().finish(booking.id(), passes + lab.chance.between(0, 2), operatorOrScreen(booking)));
    }

    String finishStopped(Booking booking) {
        return says(lab.doors
                .log()
                .finishStopped(
                        booking.id(), 1, lab.chance.one(List.of(ResetCause.values())), operatorOrScreen(booking)));
    }

    String closeOut(Booking booking) {
        long done = lab.doors.runs().events(booking.id()).stream()
                .filter(event -> event.kind() == RunEvent.Kind.CLOSE_OUT)
                .count();
        CloseOutItem item = lab.chance.percent(95) && done < CloseOutItem.values().length
                ? CloseOutItem.values()[(int) done]
                : lab.chance.one(List.of(CloseOutItem.values()));
        String choice = lab.chance.percent(93)
                ? item.choices().get(0).value()
                : lab.chance.one(item.choices()).value();
        if (item == CloseOutItem.ODD && stoppedItself(booking)) {
            choice = "protective-stop";
        }
        return item + " " + says(lab.doors.log().closeOut(booking.id(), item, choice, operatorOrScreen(booking)));
    }

    private boolean stoppedItself(Booking booking) {
        return lab.doors.runs().events(booking.id()).stream()
                .anyMatch(event -> event.kind() == RunEvent.Kind.PROTECTIVE_STOP);
    }

    /** Anyone, at any moment. */
    String stop(CellId cell) {
        RunEvent.Kind kind = lab.chance.percent(75) ? RunEvent.Kind.E_STOP_PRESS : RunEvent.Kind.PROTECTIVE_STOP;
        return lab.doors
                        .log()
                        .stop(cell, kind, lab.chance.one(lab.cast.everybody()).id())
                        .kind()
                + " on " + lab.cast.name(cell);
    }

    String reset(CellId cell) {
        Person staff = lab.chance.percent(90) ? lab.chance.one(lab.cast.staff()) : lab.chance.one(lab.cast.students);
        ResetCause cause =
                lab.chance.percent(50) ? ResetCause.PRECAUTION : lab.chance.one(List.of(ResetCause.values()));
        return cause + " " + says(lab.doors.log().resetAt(cell, cause, "", new Witness(staff.id(), staff.id(), null)));
    }

    private static String says(Logged logged) {
        return logged instanceof Logged.Refused refused ? "refused " + refused.code() : "kept";
    }
}
