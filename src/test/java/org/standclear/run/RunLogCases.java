package org.standclear.run;

import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.cell.Cells;
import org.standclear.run.RunLog.Logged;
import org.standclear.run.RunLog.Witness;
import org.standclear.signoff.BenchCases;
import org.standclear.signoff.BenchScene;
import org.standclear.signoff.Release;

/** What tests of the run log share: a run that has begun, and its close-out. */
abstract class RunLogCases extends BenchCases {

    @Autowired
    RunLog log;

    @Autowired
    Runs runs;

    @Autowired
    Cells cells;

    Release.Lapsed lapsed() {
        return java.util.Objects.requireNonNull(
                releases.latest(scene().booking).orElseThrow().lapsed());
    }

    RunEvent kept(Logged logged) {
        return is(Logged.Kept.class, logged).event();
    }

    Logged.Refused refused(Logged logged) {
        return is(Logged.Refused.class, logged);
    }

    Run started() {
        Release release = scene().released();
        kept(log.start(scene().booking, release.code(), scene().noor.id()));
        return runs.of(scene().booking).orElseThrow();
    }

    private boolean stoppedItself() {
        return runs.events(scene().booking).stream().anyMatch(event -> event.kind() == RunEvent.Kind.PROTECTIVE_STOP);
    }

    void closeOut() {
        for (CloseOutItem item : CloseOutItem.values()) {
            kept(log.closeOut(
                    scene().booking,
                    item,
                    item.choices(stoppedItself()).get(0).value(),
                    scene().mateo.id()));
        }
    }

    Witness adaeze() {
        return new Witness(scene().adaeze.id(), scene().adaeze.id(), null);
    }

    /** A second scene in the same database. */
    record RunPair(org.springframework.context.ApplicationContext application) {

        Run second(RunLog log) {
            BenchScene other = new BenchScene(application);
            Release release = other.released();
            log.start(other.booking, release.code(), other.noor.id());
            return application.getBean(Runs.class).of(other.booking).orElseThrow();
        }
    }
}
