package org.standclear.run.web;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.people.DutyRoster;
import org.standclear.people.Person;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.run.Run;
import org.standclear.run.RunEvent;
import org.standclear.run.Runs;
import org.standclear.signoff.BenchNumbers;
import org.standclear.signoff.Release;
import org.standclear.signoff.SignoffDesk.Standing;

/** Whether a first run goes on, who can say that they watched it, and until when it may go on. */
@Component
class BenchWatches {

    private final Runs runs;
    private final DutyRoster duty;
    private final BenchNumbers numbers;
    private final LabTime labTime;

    BenchWatches(Runs runs, DutyRoster duty, BenchNumbers numbers, LabTime labTime) {
        this.runs = runs;
        this.duty = duty;
        this.numbers = numbers;
        this.labTime = labTime;
    }

    BenchView.@Nullable Watch of(Run run, Standing standing, SignedInPerson me, Instant now) {
        Release release = standing.release().filter(Release::firstRun).orElse(null);
        if (release == null) {
            return null;
        }
        boolean done = isWatched(run);
        Instant until = until(release);
        return new BenchView.Watch(
                done ? List.of() : watchers(standing, me, now),
                done,
                until == null ? "" : labTime.time(until),
                until == null ? "" : labTime.iso(until));
    }

    /** Whether a first run that loops has gone on for as long as one may. */
    boolean isOver(Release release, Instant now) {
        Instant until = until(release);
        return release.firstRun() && until != null && !now.isBefore(until);
    }

    /** Null when the passes limit it, or it has not started. */
    private @Nullable Instant until(Release release) {
        Instant started = release.usedAt();
        return release.passLimit() != null || started == null
                ? null
                : started.plus(numbers.inForce().firstRun());
    }

    private boolean isWatched(Run run) {
        boolean watched = false;
        for (RunEvent event : runs.events(run.booking())) {
            watched = event.kind() == RunEvent.Kind.WATCHED || watched && event.kind() != RunEvent.Kind.STARTED;
        }
        return watched;
    }

    /** Who could say so; the log asks once more, and more. */
    private List<BenchView.Named> watchers(Standing standing, SignedInPerson me, Instant now) {
        if (me.is(Role.BENCH)) {
            return duty.onDuty(now).stream()
                    .filter(person -> !standing.prepared().booking().involves(person.id()))
                    .map(BenchWatches::named)
                    .toList();
        }
        return me.isLabStaff()
                        && duty.onDuty(me.id(), now)
                        && !standing.prepared().booking().involves(me.id())
                ? List.of(new BenchView.Named(me.id().toString(), me.printedName()))
                : List.of();
    }

    private static BenchView.Named named(Person person) {
        return new BenchView.Named(person.id().toString(), person.printedName());
    }
}
