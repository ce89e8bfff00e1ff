package org.standclear.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.standclear.demo.IncidentsSeed.ActionSeed;
import org.standclear.demo.IncidentsSeed.IncidentSeed;
import org.standclear.demo.IncidentsSeed.ReturnSeed;
import org.standclear.demo.IncidentsSeed.RunSeed;
import org.standclear.demo.VisitScript.Visit;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.run.ResetCause;
import org.standclear.run.RunEvent;
import org.standclear.signoff.Release;

/** Three incidents of weeks before the last: one that waits for its review, one in review, one closed. */
final class IncidentScript {

    private static final LocalTime MORNING = LocalTime.of(8, 20);
    private static final String STATION = "front edge";

    private final WeekTimes times;
    private final Timeline timeline;
    private final Roster roster;
    private final DemoCells cells;
    private final DemoBookings bookings;
    private final DemoBench bench;
    private final VisitScript visits;
    private final DemoIncidents incidents;

    IncidentScript(
            WeekTimes times,
            Timeline timeline,
            Roster roster,
            DemoCells cells,
            DemoBookings bookings,
            DemoBench bench,
            VisitScript visits,
            DemoIncidents incidents) {
        this.times = times;
        this.timeline = timeline;
        this.roster = roster;
        this.cells = cells;
        this.bookings = bookings;
        this.bench = bench;
        this.visits = visits;
        this.incidents = incidents;
    }

    void write(List<IncidentSeed> seeds) {
        seeds.forEach(this::write);
    }

    /** An incident that is being told, and its id once it is. */
    private record Told(IncidentSeed seed, LocalDate day, CellId cell, AtomicReference<@Nullable IncidentId> id) {

        IncidentId known() {
            IncidentId known = id.get();
            if (known == null) {
                throw new IllegalStateException("the demo's script: " + seed.key() + " is not reported yet");
            }
            return known;
        }
    }

    private void write(IncidentSeed seed) {
        LocalDate day = times.date(seed.day()).minusWeeks(seed.weeksBack());
        Told told = new Told(seed, day, roster.cell(seed.cell()), new AtomicReference<>());
        Instant at = times.at(day, seed.at());
        RunSeed run = seed.run();
        if (run != null) {
            run(told, run, at);
        }
        PersonId reporter = roster.person(seed.reporter());
        timeline.add(
                at.plus(Duration.ofMinutes(8)), () -> told.id().set(incidents.report(seed, told.cell(), reporter)));
        String statement = seed.statement();
        if (statement != null) {
            timeline.add(at.plus(Duration.ofMinutes(25)), () -> incidents.state(told.known(), statement, reporter));
        }
        IncidentsSeed.FormSeed form = seed.form();
        if (form != null) {
            timeline.add(
                    at.plus(Duration.ofMinutes(50)),
                    () -> incidents.fill(told.known(), seed, form, roster.person(form.by())));
        }
        if (seed.reviewer() != null) {
            review(told, roster.person(seed.reviewer()));
        }
    }

    private void run(Told told, RunSeed run, Instant at) {
        PersonId operator = roster.person(run.operator());
        PersonId attendant = roster.person(run.attendant());
        // the week's own day tests begin later
        timeline.add(
                times.at(told.day(), LocalTime.of(7, 50)),
                () -> cells.test(told.cell(), STATION, roster.person("adaeze")));
        timeline.add(times.at(told.day().minusDays(1), LocalTime.of(16, 0)), () -> {
            BookingId id = bookings.book(told.cell(), at, operator, attendant, roster.studies(operator));
            bookings.attach(id, operator, roster.seed(operator), run.program());
            play(new Visit(id, told.cell(), at, operator, attendant), run.stopped());
        });
    }

    private void play(Visit visit, boolean stopped) {
        timeline.add(visit.minute(-4), () -> bookings.checkIn(visit.booking(), visit.operator()));
        timeline.add(visit.minute(-2), () -> bench.session(visit.booking(), roster));
        AtomicReference<@Nullable Release> release = new AtomicReference<>();
        visits.run(visit, 3, release);
        if (stopped) {
            timeline.add(
                    visit.minute(7), () -> bench.stop(visit.cell(), RunEvent.Kind.PROTECTIVE_STOP, visit.operator()));
            timeline.add(visit.minute(12), () -> {
                Release issued = release.get();
                if (issued != null) {
                    bench.reset(
                            visit.booking(),
                            ResetCause.PART,
                            "The bit met the plate: wrong offset.",
                            issued.releaser());
                }
            });
        }
        timeline.add(visit.minute(14), () -> bench.finish(visit.booking(), stopped ? 0 : 5, visit.operator()));
        timeline.add(visit.minute(16), () -> bench.closeOut(visit.booking(), visit.operator()));
    }

    private void review(Told told, PersonId reviewer) {
        IncidentSeed seed = told.seed();
        Instant taken = times.at(told.day(), LocalTime.of(16, 30));
        timeline.add(taken, () -> incidents.review(told.known(), orNone(seed.causes()), reviewer));
        String medical = seed.medical();
        if (medical != null) {
            timeline.add(taken, () -> incidents.noteMedical(told.known(), medical, reviewer));
        }
        for (ActionSeed action : orNone(seed.actions())) {
            action(told, action, reviewer, taken);
        }
        if (seed.restart() != null && seed.returned() != null) {
            restart(told, seed.restart(), seed.returned(), reviewer);
        }
        IncidentsSeed.RiskSeed risk = seed.risk();
        if (risk != null) {
            timeline.add(
                    times.at(told.day().plusDays(risk.afterDays()), LocalTime.of(11, 40)),
                    () -> incidents.riskReviewed(told.known(), risk.outcome(), reviewer));
        }
        IncidentsSeed.ClosedSeed closed = seed.closed();
        if (closed != null) {
            timeline.add(
                    times.at(told.day().plusDays(closed.afterDays()), LocalTime.of(17, 0)),
                    () -> incidents.close(told.known(), closed.learned(), reviewer));
        }
    }

    private void action(Told told, ActionSeed action, PersonId reviewer, Instant agreed) {
        PersonId owner = roster.person(action.owner());
        timeline.add(agreed, () -> incidents.agree(told.known(), action, owner, reviewer));
        String done = action.done();
        if (action.doneAfterDays() != null && done != null) {
            timeline.add(
                    times.at(told.day().plusDays(action.doneAfterDays()), LocalTime.of(15, 10)),
                    () -> incidents.actionDone(told.known(), action, done, owner));
        }
    }

    /** The next morning: restart approved, day test, two readings, put back by somebody who had no part in it. */
    private void restart(Told told, String grounds, ReturnSeed returned, PersonId reviewer) {
        Instant morning = times.at(told.day().plusDays(1), MORNING);
        PersonId by = roster.person(returned.by());
        timeline.add(morning, () -> incidents.approveRestart(told.known(), grounds, reviewer));
        timeline.add(morning.plus(Duration.ofMinutes(10)), () -> cells.test(told.cell(), STATION, by));
        timeline.add(
                morning.plus(Duration.ofMinutes(20)),
                () -> cells.putBack(told.cell(), by, roster.person(returned.second()), returned.mended()));
    }

    private static <T> List<T> orNone(@Nullable List<T> list) {
        return list == null ? List.of() : list;
    }
}
