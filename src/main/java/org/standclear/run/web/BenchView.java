package org.standclear.run.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.run.ResetCause;
import org.standclear.signoff.ItemField;
import org.standclear.signoff.ListItem;
import org.standclear.signoff.Obstacle;
import org.standclear.signoff.SignoffDesk.Answered;

/**
 * What a bench screen shows: one thing to do now, and beside it who, what and which item.
 *
 * @param stage which act the screen offers
 * @param headline the instruction, twelve words at most
 * @param text what is said below it, a line for each thing, or empty
 * @param stamp changes when the screen has something new to show
 * @param quiet whether nothing is typed on it, so that it may load itself anew without scripts too
 */
record BenchView(
        String cell,
        String cellName,
        String cellState,
        String cellStateWords,
        Stage stage,
        String kicker,
        String headline,
        String text,
        @Nullable BookingCard booking,
        @Nullable Ask ask,
        @Nullable Sign sign,
        @Nullable Released release,
        @Nullable Running run,
        @Nullable Swap swap,
        List<Tap> closeOut,
        List<Named> people,
        List<ResetCause> causes,
        List<String> notices,
        List<Obstacle> obstacles,
        List<Line> list,
        boolean mayAct,
        boolean shared,
        String stamp,
        boolean quiet) {

    /** What stands below the headline, line by line. */
    public List<String> lines() {
        return text.lines().toList();
    }

    /** Which act the screen offers. */
    enum Stage {
        IDLE,
        FOREIGN,
        NO_PROGRAM,
        NOT_WITHIN,
        NO_ATTENDANT,
        EARLY,
        ASK,
        SIGN,
        WAIT,
        GATES,
        RELEASED,
        RUNNING,
        STOPPED,
        CLOSE_OUT,
        CLOSED
    }

    /** Who and what is at the cell. */
    record BookingCard(
            String id,
            String span,
            String operator,
            String attendant,
            String state,
            String stateWords,
            String program,
            String cellVersion,
            String tool,
            String payload,
            String heldPeak,
            String fullPower,
            List<String> cautions,
            String answerHref,
            String answerWords) {}

    /** An item to answer. */
    record Ask(String sheet, String part, ListItem item, boolean first, String fullPower) {

        /** Whether one tap answers it. */
        public boolean oneTap() {
            return item.fields().size() == 1 && item.fields().get(0).kind() == ItemField.Kind.CHOICE;
        }
    }

    /** A signature to give; a signer is chosen where several may. */
    record Sign(
            String sheet,
            String part,
            String meaning,
            String statement,
            String sha256,
            List<Answered> answered,
            List<Named> signers,
            boolean pin,
            String verb,
            String fullPower) {}

    /** A release that waits for its start. */
    record Released(String until, String iso, String code, String firstRun, boolean mayStart) {}

    /** A run that goes on or was stopped; {@code whys} are the causes to choose from when a stopped one is finished. */
    record Running(
            String id,
            String since,
            int passes,
            @Nullable Integer limit,
            String iso,
            List<Tap> whys,
            @Nullable Watch watch) {}

    /**
     * Who is at the e-stop, how long still, and who could take over.
     *
     * @param attendant empty while nobody is
     * @param until empty while no turn is counted
     * @param asked who is asked to sign for it now; empty when nobody is
     * @param onDuty staff on duty who could take over: the first to ask, since they are here
     * @param people everybody else who could
     * @param mayLeave whether the attendant may simply go, since nothing moves
     */
    record Swap(
            String attendant,
            String until,
            String iso,
            boolean over,
            String asked,
            List<Named> onDuty,
            List<Named> people,
            boolean mayLeave) {

        public Swap {
            onDuty = List.copyOf(onDuty);
            people = List.copyOf(people);
        }

        /** Whether there is nobody to ask. */
        public boolean nobody() {
            return onDuty.isEmpty() && people.isEmpty();
        }
    }

    /**
     * A first run that is to be watched.
     *
     * @param watchers who can say that they watched it; empty once it is on record, or where nobody here can
     * @param done whether it is on record
     * @param until when the longest first run is over; empty when the passes limit it
     */
    record Watch(List<Named> watchers, boolean done, String until, String iso) {

        public Watch {
            watchers = List.copyOf(watchers);
        }
    }

    /** One large button. */
    record Tap(String value, String words) {}

    /** A person to choose. */
    record Named(String id, String name) {}

    /** One line of the list: {@code done}, {@code now} or {@code later}. */
    record Line(int number, String words, String state) {}
}
