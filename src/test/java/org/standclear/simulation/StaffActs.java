package org.standclear.simulation;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.Booking;
import org.standclear.cell.Cell;
import org.standclear.cell.CellRegister.NewProposal;
import org.standclear.cell.CellRegister.Proposed;
import org.standclear.cell.CellStates.StopCell;
import org.standclear.cell.CellTag;
import org.standclear.cell.DayTestReadings;
import org.standclear.cell.SampleCell;
import org.standclear.cell.ToolReading;
import org.standclear.check.StoredAnswer;
import org.standclear.people.Authorisation;
import org.standclear.people.AuthorisationRegister.Outcome.Done;
import org.standclear.people.DutyRegister;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.signoff.Waiver;
import org.standclear.signoff.Waivers.Blocking;
import org.standclear.signoff.Waivers.GiveWaiver;

/** What technicians and instructors do around the runs. */
final class StaffActs {

    private final Lab lab;
    private final List<Authorisation> lapsed = new ArrayList<>();
    private @Nullable UUID dutyPeriod;

    StaffActs(Lab lab) {
        this.lab = lab;
    }

    String dayTest(CellId cell) {
        boolean passes = lab.chance.percent(94);
        double override = lab.doors.cells().current(cell).file().contains("override-percent: 40") ? 40 : 50;
        return "day test "
                + lab.doors
                        .dayTests()
                        .record(
                                cell,
                                lab.chance.one(lab.cast.staff()).id(),
                                new DayTestReadings(
                                        "pillar by the door",
                                        passes,
                                        false,
                                        true,
                                        "reduced",
                                        "level 3",
                                        override,
                                        "G-02",
                                        true))
                        .passed();
    }

    String planDuty(Person staff) {
        Instant now = lab.clock.instant();
        var outcome = lab.doors.duty().plan(staff.id(), now, now.plus(Duration.ofHours(10)), null);
        if (outcome instanceof DutyRegister.Outcome.Done done) {
            dutyPeriod = done.period();
        }
        return staff.printedName() + " " + Lab.word(outcome);
    }

    /** Somebody goes home early. */
    String endDuty() {
        UUID period = dutyPeriod;
        dutyPeriod = null;
        return period == null
                ? "nobody to send home"
                : Lab.word(lab.doors.duty().remove(period, lab.cast.instructor.id()));
    }

    String stop(CellId cell) {
        CellTag.Kind kind = lab.chance.percent(60) ? CellTag.Kind.HOLD : CellTag.Kind.OUT_OF_SERVICE;
        lab.doors
                .states()
                .stop(new StopCell(
                        cell, kind, lab.chance.one(lab.cast.everybody()).id(), "something rattles", null));
        return kind + " on " + lab.cast.name(cell);
    }

    /** One act of the way back into service, mostly the one that is due; the next may be somebody else's, or forgotten. */
    String back(CellId cell) {
        Person staff = lab.chance.one(lab.cast.staff());
        return switch (lab.chance.percent(85) ? due(cell) : lab.chance.between(0, 2)) {
            case 0 -> dayTest(cell);
            case 1 -> read(cell, staff);
            default -> Lab.word(lab.doors.states().returnToService(cell, staff.id(), "mended and tested"));
        };
    }

    private int due(CellId cell) {
        Instant tagged = lab.doors.states().tags(cell).stream()
                .filter(tag -> tag.hangs() && tag.kind().stops())
                .map(CellTag::placedAt)
                .max(Comparator.naturalOrder())
                .orElse(Instant.EPOCH);
        boolean tested = lab.doors
                .dayTests()
                .latest(cell, lab.clock.instant())
                .filter(test -> test.passed() && test.testedAt().isAfter(tagged))
                .isPresent();
        List<ToolReading> read = lab.doors.readings().sinceTagged(cell);
        boolean agree = read.stream().map(ToolReading::offsetMm).distinct().count() == 1;
        return tested ? (agree && read.size() >= 2 ? 2 : 1) : 0;
    }

    private String read(CellId cell, Person reader) {
        List<Double> offset = lab.chance.percent(95) ? List.of(0.0, 0.0, -60.0) : List.of(0.0, 0.0, -55.0);
        return lab.doors
                .readings()
                .read(new ToolReading(cell, reader.id(), lab.clock.instant(), "G-02", offset))
                .orElse("read by " + reader.printedName());
    }

    String restrict(CellId cell) {
        Cell now = lab.doors.cells().find(cell).orElseThrow();
        if (now.stateReason().isEmpty()) {
            lab.doors.states().restrict(cell, lab.cast.instructor.id(), "a new tool");
            return "restricted " + lab.cast.name(cell);
        }
        lab.doors.states().unrestrict(cell, lab.cast.instructor.id(), "known by now");
        return "not restricted " + lab.cast.name(cell);
    }

    /** A new version of the cell, with the stand line moved or a lower override. */
    String newVersion(CellId id) {
        Cell cell = lab.doors.cells().find(id).orElseThrow();
        int next = cell.currentVersion() + 1;
        String file = SampleCell.file(cell.name(), next);
        file = lab.chance.percent(85)
                ? file.replace("stand-line-mm: 1800", "stand-line-mm: " + lab.chance.between(1500, 2500))
                : file.replace("override-percent: 50", "override-percent: 40");
        Person proposer = lab.chance.one(lab.cast.technicians);
        Proposed proposed = lab.doors.register().propose(new NewProposal(id, file, "measured again", proposer.id(), 0));
        if (proposed instanceof Proposed.Kept kept) {
            return lab.cast.name(id) + " "
                    + Lab.word(lab.doors
                            .register()
                            .approve(kept.proposal().id(), lab.cast.instructor.id(), cell.currentVersion()));
        }
        return Lab.word(proposed);
    }

    /** Somebody's authorisation ends; another time it is granted anew. */
    String authorisation() {
        if (!lapsed.isEmpty() && lab.chance.percent(70)) {
            Authorisation before = lapsed.remove(0);
            Instant now = lab.clock.instant();
            lab.cast.authorise(lab.cast.find(before.person()), before.duty(), now, now.plus(Duration.ofDays(60)));
            return "granted again " + before.duty();
        }
        Done standing = lab.cast.granted.remove(lab.chance.between(0, lab.cast.granted.size() - 1));
        lapsed.add(standing.granted().authorisation());
        return Lab.word(lab.doors
                .authorisations()
                .revoke(standing.granted().id(), "induction to be repeated", lab.cast.instructor.id()));
    }

    /** Of unread lines with the sentence that sets them aside, or now and then without it, or with another one. */
    String waive(Booking booking) {
        var question = lab.doors.waivers().question(booking.id());
        StoredAnswer answer = question.prepared().answer();
        boolean unread = question.blocking().stream().map(Blocking::check).anyMatch("coverage"::equals);
        String what = unread ? "unread lines " : "";
        return what
                + Lab.word(lab.doors
                        .waivers()
                        .give(new GiveWaiver(
                                booking.id(),
                                answer == null ? null : answer.id(),
                                "watched by me for one run",
                                lab.clock.instant().plus(Duration.ofMinutes(lab.chance.between(2, 40))),
                                lab.chance.percent(90)
                                        ? Waiver.LINES_READ
                                        : lab.chance.percent(50) ? null : "I have looked at the lines",
                                lab.cast.instructor.id())));
    }
}
