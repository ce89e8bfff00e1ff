package org.standclear.live;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Objects;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.booking.Bookings;
import org.standclear.cell.CellRegister;
import org.standclear.cell.CellStates;
import org.standclear.cell.Cells;
import org.standclear.cell.DayTests;
import org.standclear.cell.SampleCell;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentReports;
import org.standclear.incident.ReporterPart;
import org.standclear.people.AuthorisationRegister;
import org.standclear.people.CourseRegister;
import org.standclear.people.CourseRegister.NewLimits;
import org.standclear.people.CourseRegister.Outcome;
import org.standclear.people.DutyRegister;
import org.standclear.people.Person;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.program.ProgramUploads;
import org.standclear.program.SampleProgram;
import org.standclear.run.ResetCause;
import org.standclear.run.RunEvent;
import org.standclear.run.RunLog;
import org.standclear.signoff.BenchNumbers;
import org.standclear.signoff.BenchScene;
import org.standclear.signoff.BenchSettings;
import org.standclear.signoff.Handovers;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.Part;
import org.standclear.signoff.Release;
import org.standclear.signoff.Releases;
import org.standclear.signoff.Waivers;
import org.standclear.signoff.Waivers.GiveWaiver;
import org.standclear.signoff.Waivers.TakeBack;
import org.standclear.testing.MovableClock;

/** What makes each kind of lapse happen to the scene's release. */
final class LapseActs {

    private final ApplicationContext application;
    private final BenchScene scene;
    private final MovableClock clock;
    private final JdbcClient jdbc;

    LapseActs(ApplicationContext application, BenchScene scene, MovableClock clock, JdbcClient jdbc) {
        this.application = application;
        this.scene = scene;
        this.clock = clock;
        this.jdbc = jdbc;
    }

    /**
     * One way to lose a release.
     *
     * @param before gets to the release
     * @param after leaves what others share as it was
     */
    record Act(Callable<Release> before, Runnable happens, Runnable after) {}

    private Act released(Runnable happens) {
        return new Act(scene::released, happens, () -> {});
    }

    /** No default: a rule that is new does not compile without its case. */
    Act of(LapseRule rule) {
        return switch (rule) {
            case FILE_CHANGED ->
                released(() -> {
                    clock.moveBy(Duration.ofSeconds(30));
                    scene.next(scene.revision(), "Peg and plate.");
                });
            case CELL_VERSION_CHANGED -> released(this::anotherVersion);
            case LIMITS_CHANGED -> courseLimits();
            case INCIDENT -> released(this::contact);
            case CELL_NOT_IN_SERVICE ->
                released(() -> bean(CellStates.class).tagOut(scene.cell, scene.mateo.id(), "cable chafe"));
            case OPERATOR_SWAPPED -> released(this::anotherOperator);
            case ATTENDANT_SWAPPED ->
                released(() -> bean(Bookings.class).nameAttendant(scene.booking, tal().id(), scene.noor.id()));
            case ATTENDANT_LEFT -> released(() -> bean(Handovers.class).left(scene.booking, scene.mateo.id()));
            case ATTENDANT_NOT_STAFF ->
                released(() -> bean(CellStates.class).restrict(scene.cell, scene.hemi.id(), "a new tool"));
            case AUTHORISATION_ENDED -> released(this::revoked);
            case RELEASER_OFF_DUTY -> offDuty();
            case VALUES_CHANGED ->
                released(() -> {
                    clock.moveBy(Duration.ofSeconds(20));
                    bean(DayTests.class).record(scene.cell, scene.adaeze.id(), SampleCell.goodReadings());
                });
            case WINDOW_OVER -> released(() -> clock.moveTo(scene.now().end()));
            case NOT_STARTED_IN_TIME -> released(() -> clock.moveBy(Duration.ofMinutes(10)));
            case TURN_OVER -> turnOver();
            case E_STOP_PRESS -> released(() -> stop(RunEvent.Kind.E_STOP_PRESS));
            case PROTECTIVE_STOP -> released(() -> stop(RunEvent.Kind.PROTECTIVE_STOP));
            case SECOND_PROTECTIVE_STOP ->
                new Act(this::startedAgain, () -> stop(RunEvent.Kind.PROTECTIVE_STOP), () -> {});
            case WAIVER_TAKEN_BACK -> waiver();
            case WITHDRAWN ->
                released(() -> bean(Releases.class)
                        .withdraw(scene.booking, LapseRule.WITHDRAWN, "Taken back.", scene.noor.id()));
        };
    }

    private <T> T bean(Class<T> type) {
        return application.getBean(type);
    }

    private Person tal() {
        return scene.lab.student("Tal Emberley");
    }

    private void stop(RunEvent.Kind kind) {
        bean(RunLog.class).stop(scene.cell, kind, scene.mateo.id());
    }

    private void anotherVersion() {
        String name = bean(Cells.class).find(scene.cell).orElseThrow().name();
        CellRegister register = bean(CellRegister.class);
        register.approve(SampleCell.proposed(register, scene.cell, SampleCell.file(name, 2)), PersonId.next(), 1);
    }

    private void contact() {
        bean(IncidentReports.class)
                .report(IncidentReports.Report.brief(
                        scene.cell,
                        IncidentClass.CONTACT,
                        "The arm touched a sleeve.",
                        new IncidentReports.Teller.Named(scene.hemi.id(), ReporterPart.SAW_IT)));
    }

    /** Nobody can do that by a page; the rule holds against it all the same. */
    private void anotherOperator() {
        jdbc.sql("update bookings set operator_id = :other where id = :booking")
                .param("other", tal().id().value())
                .param("booking", scene.booking.value())
                .update();
    }

    private void revoked() {
        jdbc.sql("select id from authorisations where person_id = :person and duty = 'ATTENDANT'")
                .param("person", scene.mateo.id().value())
                .query(UUID.class)
                .list()
                .forEach(id -> bean(AuthorisationRegister.class).revoke(id, "left the course", scene.hemi.id()));
    }

    private Act offDuty() {
        Person tomasz = scene.lab.technician("Tomasz Fennimore-Ash");
        bean(DutyRegister.class)
                .plan(tomasz.id(), BenchScene.START.minusSeconds(3600), BenchScene.START.plusSeconds(300), null);
        return new Act(
                () -> scene.awaitsReleaser().releasedBy(tomasz),
                () -> clock.moveTo(BenchScene.START.plusSeconds(300)),
                () -> {});
    }

    private Act turnOver() {
        BenchNumbers numbers = bean(BenchNumbers.class);
        return new Act(
                () -> {
                    numbers.change(new BenchSettings(10, 10, 4, 15, 5, 2), scene.hemi.id(), "a hot day");
                    return scene.released();
                },
                () -> clock.moveBy(Duration.ofMinutes(4)),
                () -> numbers.change(BenchSettings.DEFAULTS, scene.hemi.id(), "as before"));
    }

    @SuppressWarnings("unchecked")
    private Act courseLimits() {
        CourseRegister courses = bean(CourseRegister.class);
        String code = "R" + UUID.randomUUID().toString().substring(0, 8);
        CourseId course = ((Outcome.Done<CourseId>) courses.addCourse(code, "Robot cells", null)).id();
        ofCourse(course);
        return new Act(
                scene::released,
                () -> {
                    clock.moveBy(Duration.ofSeconds(1));
                    courses.changeLimits(new NewLimits(course, 30.0, null, "first weeks", 1, scene.adaeze.id()));
                },
                () -> ofCourse(null));
    }

    private void ofCourse(@Nullable CourseId course) {
        jdbc.sql("update bookings set course_id = :course where id = :booking")
                .param("course", course == null ? null : course.value())
                .param("booking", scene.booking.value())
                .update();
    }

    /** Stopped by itself once, reset, and running again. */
    private Release startedAgain() {
        RunLog log = bean(RunLog.class);
        log.start(scene.booking, scene.released().code(), scene.noor.id());
        stop(RunEvent.Kind.PROTECTIVE_STOP);
        log.reset(scene.booking, ResetCause.PART, "", new RunLog.Witness(scene.adaeze.id(), scene.adaeze.id(), null));
        scene.answerAndSign(Part.OPERATOR, scene.noor);
        scene.answerAndSign(Part.ATTENDANT, scene.mateo);
        Release again = scene.releasedBy(scene.hemi);
        log.start(scene.booking, again.code(), scene.noor.id());
        return again;
    }

    private Act waiver() {
        Person ines = scene.lab.person("Ines Quarryvale", Role.INSTRUCTOR);
        Waivers waivers = bean(Waivers.class);
        byte[] sheet =
                SampleProgram.sheet("Peg").replace("  part-kg: 0.06\n", "").getBytes(StandardCharsets.UTF_8);
        var uploaded = (ProgramUploads.Uploaded) bean(ProgramUploads.class)
                .upload(new ProgramUploads.UploadProgram(scene.noor.id(), null, null, "peg.yaml", sheet, null));
        scene.preparation.attach(scene.booking, uploaded.revision().id(), scene.noor.id());
        var answer =
                Objects.requireNonNull(scene.preparation.look(scene.booking).answer());
        var given = (Waivers.Given.Kept) waivers.give(new GiveWaiver(
                scene.booking,
                answer.id(),
                "The peg was weighed: 60 g.",
                scene.now().end(),
                null,
                ines.id()));
        return new Act(
                scene::released,
                () -> waivers.takeBack(
                        new TakeBack(scene.booking, given.waiver().id(), "Another peg lies there.", ines.id())),
                () -> {});
    }
}
