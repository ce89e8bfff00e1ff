package org.standclear.simulation;

import java.util.List;
import org.springframework.context.ApplicationContext;
import org.standclear.run.CloseOutItem;
import org.standclear.run.RunLog;
import org.standclear.run.RunLog.Logged;
import org.standclear.signoff.BenchScene;
import org.standclear.signoff.Part;
import org.standclear.signoff.Releases;
import org.standclear.signoff.SignoffDesk.Signed;

/** One booking on its way from the program to the close-out, one signed or logged step after the other. */
final class Lane {

    /** Each step, and what the booking is before it. */
    enum Step {
        ATTACH,
        SESSION_OPERATOR,
        SESSION_ATTENDANT,
        BENCH_OPERATOR,
        BENCH_ATTENDANT,
        RELEASE,
        START,
        FINISH,
        CLOSE_OUT
    }

    private final BenchScene scene;
    private final RunLog log;
    private final Releases releases;

    Lane(ApplicationContext application, BenchScene scene) {
        this.scene = scene;
        log = application.getBean(RunLog.class);
        releases = application.getBean(Releases.class);
    }

    BenchScene scene() {
        return scene;
    }

    /** Where the booking stands: the step that is due, as the state and the open list tell. */
    Step due() {
        return switch (scene.state()) {
            case BOOKED -> Step.ATTACH;
            case CHECKED -> signed(Part.OPERATOR) ? Step.SESSION_ATTENDANT : Step.SESSION_OPERATOR;
            case READY ->
                signed(Part.ATTENDANT)
                        ? Step.RELEASE
                        : signed(Part.OPERATOR) ? Step.BENCH_ATTENDANT : Step.BENCH_OPERATOR;
            case RELEASED -> Step.START;
            case RUNNING -> Step.FINISH;
            case FINISHED -> Step.CLOSE_OUT;
            default -> throw new IllegalStateException("the booking is " + scene.state());
        };
    }

    private boolean signed(Part part) {
        return scene.sheet().signedBy(part).isPresent();
    }

    /** Everything of the step up to its last act; answers that are not signed yet bind nobody. */
    void prepare(Step step) {
        switch (step) {
            case SESSION_OPERATOR, BENCH_OPERATOR -> scene.answer(Part.OPERATOR, scene.noor, scene.noor);
            case SESSION_ATTENDANT, BENCH_ATTENDANT -> scene.answer(Part.ATTENDANT, scene.mateo, scene.mateo);
            case RELEASE -> scene.answer(Part.RELEASER, scene.adaeze, scene.adaeze);
            case CLOSE_OUT -> {
                List<CloseOutItem> all = List.of(CloseOutItem.values());
                all.subList(0, all.size() - 1).forEach(this::tap);
            }
            default -> {}
        }
    }

    /** The act that the step is about, in one transaction. */
    void act(Step step) {
        switch (step) {
            case ATTACH -> scene.attached();
            case SESSION_OPERATOR, BENCH_OPERATOR -> signed(scene.sign(Part.OPERATOR, scene.noor));
            case SESSION_ATTENDANT, BENCH_ATTENDANT -> signed(scene.sign(Part.ATTENDANT, scene.mateo));
            case RELEASE -> signed(scene.sign(Part.RELEASER, scene.adaeze));
            case START ->
                kept(log.start(
                        scene.booking,
                        releases.latest(scene.booking).orElseThrow().code(),
                        scene.noor.id()));
            case FINISH -> kept(log.finish(scene.booking, 5, scene.noor.id()));
            case CLOSE_OUT -> tap(CloseOutItem.ODD);
        }
    }

    /** What a process that died in the close-out left tapped stays tapped. */
    private void tap(CloseOutItem item) {
        log.closeOut(scene.booking, item, item.choices().get(0).value(), scene.noor.id());
    }

    private static void signed(Signed outcome) {
        if (!(outcome instanceof Signed.Kept || outcome instanceof Signed.Released)) {
            throw new IllegalStateException(outcome.toString());
        }
    }

    private static void kept(Logged outcome) {
        if (!(outcome instanceof Logged.Kept)) {
            throw new IllegalStateException(outcome.toString());
        }
    }
}
