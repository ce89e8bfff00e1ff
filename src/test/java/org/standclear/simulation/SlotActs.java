package org.standclear.simulation;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.standclear.booking.Booking;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.signoff.Obstacle;
import org.standclear.signoff.SignoffDesk.Standing;
import org.standclear.signoff.SignoffList;

/** What somebody does next during a slot: mostly what is due, sometimes what is not. */
final class SlotActs {

    private final Lab lab;
    private final BookingActs booking;
    private final Programs programs;
    private final StaffActs staff;
    private final RunActs run;
    private final UpkeepActs upkeep;
    private final IncidentActs incidents;
    private final BenchActs bench;
    private boolean waited;

    SlotActs(
            Lab lab,
            BookingActs booking,
            Programs programs,
            StaffActs staff,
            RunActs run,
            UpkeepActs upkeep,
            IncidentActs incidents) {
        this.lab = lab;
        this.booking = booking;
        this.programs = programs;
        this.staff = staff;
        this.run = run;
        this.upkeep = upkeep;
        this.incidents = incidents;
        bench = new BenchActs(lab);
    }

    /** Whether the last act was to wait. */
    boolean waited() {
        return waited;
    }

    String at(Booking one) {
        waited = false;
        if (lab.chance.percent(4)) {
            return otherwise(one);
        }
        return switch (one.state()) {
            case RELEASED -> released(one);
            case RUNNING -> running(one);
            case STOPPED -> stopped(one);
            case FINISHED -> run.closeOut(one);
            default -> towardsRelease(one);
        };
    }

    /** Start, unless the e-stop has to change hands first. */
    private String released(Booking one) {
        int draw = lab.chance.between(1, 100);
        if (draw <= 8) {
            return "leaves " + Lab.word(lab.doors.handovers().left(one.id(), one.operator()));
        }
        return draw <= 20 ? "swap " + booking.nameAttendant(one) : handoverOr(one, () -> run.start(one));
    }

    private String handoverOr(Booking one, Supplier<String> otherwise) {
        return lab.doors
                .desk()
                .look(one.id())
                .sheet()
                .filter(sheet -> sheet.list() == SignoffList.HANDOVER)
                .map(sheet -> "handover " + bench.tap(one, sheet))
                .orElseGet(otherwise);
    }

    private String handOver(Booking one) {
        List<PersonId> may = lab.doors.handovers().mayTakeOver(one.id());
        PersonId next = may.isEmpty() || lab.chance.percent(20)
                ? lab.chance.one(lab.cast.everybody()).id()
                : may.get(0);
        return "hands over " + Lab.word(lab.doors.handovers().ask(one.id(), next, one.operator()));
    }

    private String running(Booking one) {
        if (lab.chance.percent(35)) {
            return lab.chance.percent(50) ? handOver(one) : handoverOr(one, () -> "pass " + run.pass(one));
        }
        int draw = lab.chance.between(1, 100);
        if (draw <= 55) {
            return "pass " + run.pass(one);
        }
        return draw <= 70 ? run.stop(one.cell()) : "finish " + run.finish(one);
    }

    private String stopped(Booking one) {
        int draw = lab.chance.between(1, 100);
        if (draw <= 65) {
            return run.reset(one.cell());
        }
        return draw <= 85 ? "swap " + booking.nameAttendant(one) : run.finishStopped(one);
    }

    private String towardsRelease(Booking one) {
        Standing standing = lab.doors.desk().look(one.id());
        if (standing.sheet().isPresent() && (standing.obstacles().isEmpty() || lab.chance.percent(30))) {
            return bench.tap(one, standing.sheet().get());
        }
        if (standing.obstacles().isEmpty()) {
            waited = true;
            return one.checkedInAt() == null ? "check in " + booking.checkIn(one) : "waits";
        }
        return mend(one, lab.chance.one(standing.obstacles()));
    }

    private String mend(Booking one, Obstacle obstacle) {
        String code = obstacle.code() + ": ";
        return code
                + switch (obstacle.code()) {
                    case "no-program" -> programs.attach(one);
                    case "not-within-limits" ->
                        lab.chance.percent(50) ? "waive " + staff.waive(one) : programs.attach(one);
                    case "no-attendant",
                            "attendant-not-staff",
                            "attendant-not-authorised",
                            "attendant-elsewhere",
                            "attendant-turn-over" -> booking.nameAttendant(one);
                    case "stop-not-reset" -> run.reset(one.cell());
                    case "cell-not-in-service" -> back(one.cell());
                    case "inspection-overdue", "risk-assessment-overdue" -> upkeep.inspect(one.cell());
                    case "tool-change-open" -> upkeep.changeTool(one.cell());
                    case "operator-not-authorised" -> staff.authorisation();
                    case "no-staff-on-duty" -> staff.planDuty(lab.chance.one(lab.cast.staff()));
                    default -> obstacle.code().startsWith("day-test") ? staff.dayTest(one.cell()) : tidy(one.cell());
                };
    }

    /** Anything that people also do. */
    private String otherwise(Booking one) {
        return switch (lab.chance.between(0, 10)) {
            case 10 -> incidents.report(one.cell());
            case 0 -> "swap " + booking.nameAttendant(one);
            case 1 -> "change " + programs.change(one);
            case 2 -> "cancel " + booking.cancel(one);
            case 3 -> "start " + run.start(one);
            case 4 -> "finish " + run.finish(one);
            case 5 -> "close out " + run.closeOut(one);
            case 6 -> "waive " + staff.waive(one);
            case 7 -> "check in " + booking.checkIn(one);
            case 8 -> "version " + staff.newVersion(one.cell());
            default -> "stop " + run.stop(one.cell());
        };
    }

    /** What happens in the lab whatever the bookings are at. */
    String meanwhile() {
        CellId cell = lab.chance.one(lab.cast.cells);
        return switch (lab.chance.between(0, 27)) {
            case 20 -> incidents.report(cell);
            case 21, 22, 23 -> incidents.goOn(cell);
            case 24 -> upkeep.inspect(cell);
            case 25 -> upkeep.changeTool(cell);
            case 26, 27 -> upkeep.paperCard(cell);
            case 0, 1 -> "missed " + lab.doors.bookingDesk().releaseMissed();
            case 2, 3 -> "rechecked " + lab.doors.rechecks().runPending(3);
            case 4 -> "stop " + run.stop(cell);
            case 5 -> "stop " + staff.stop(cell);
            case 6, 7 -> "authorisation " + staff.authorisation();
            case 8 -> "duty " + staff.endDuty();
            case 9, 10, 11 -> "duty " + staff.planDuty(lab.chance.one(lab.cast.staff()));
            case 12 -> staff.restrict(cell);
            case 13 -> "version " + staff.newVersion(cell);
            case 14 -> staff.dayTest(cell);
            default -> lab.unsent.isEmpty() ? "no old form" : "old form " + bench.sendOld();
        };
    }

    /** Whether the cell could be used tomorrow. */
    boolean isTidy(CellId cell) {
        return left(cell).isEmpty()
                && !upkeep.changes(cell)
                && lab.doors.cells().find(cell).orElseThrow().state().mayRun();
    }

    /** One thing that a cell still needs. */
    String tidy(CellId cell) {
        Optional<Booking> left = left(cell);
        if (left.isPresent()) {
            return end(left.get());
        }
        return upkeep.changes(cell) ? upkeep.changeTool(cell) : back(cell);
    }

    /** An incident's restart first, then the test list. */
    private String back(CellId cell) {
        return incidents.waits(cell) && lab.chance.percent(92) ? incidents.goOn(cell) : staff.back(cell);
    }

    /** A run on the cell that was not handed back. */
    private Optional<Booking> left(CellId cell) {
        return lab.doors.runs().open().stream()
                .filter(one -> one.cell().equals(cell))
                .map(one -> lab.booking(one.booking()))
                .findFirst();
    }

    private String end(Booking one) {
        return switch (one.state()) {
            case FINISHED -> run.closeOut(one);
            case STOPPED -> run.finishStopped(one);
            default -> run.finish(one);
        };
    }
}
