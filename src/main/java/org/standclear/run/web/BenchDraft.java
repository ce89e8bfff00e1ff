package org.standclear.run.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.cell.Cell;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.run.ResetCause;
import org.standclear.run.web.BenchView.Stage;
import org.standclear.signoff.Obstacle;

/** A bench screen while it is put together. */
final class BenchDraft {

    private final Cell cell;
    private final SignedInPerson me;
    private Stage stage = Stage.IDLE;
    private String kicker = "";
    private String headline = "";
    private String text = "";
    private BenchView.@Nullable BookingCard booking;
    private BenchView.@Nullable Ask ask;
    private BenchView.@Nullable Sign sign;
    private BenchView.@Nullable Released release;
    private BenchView.@Nullable Running run;
    private BenchView.@Nullable Swap swap;
    private List<BenchView.Tap> closeOut = List.of();
    private List<BenchView.Named> people = List.of();
    private List<ResetCause> causes = List.of();
    private List<String> notices = List.of();
    private List<Obstacle> obstacles = List.of();
    private List<BenchView.Line> list = List.of();
    private boolean mayAct;

    BenchDraft(Cell cell, SignedInPerson me) {
        this.cell = cell;
        this.me = me;
    }

    BenchDraft stage(Stage chosen) {
        stage = chosen;
        return this;
    }

    BenchDraft head(String newKicker, String newHeadline, String newText) {
        kicker = newKicker;
        headline = newHeadline;
        text = newText;
        return this;
    }

    BenchDraft booking(BenchView.BookingCard card) {
        booking = card;
        return this;
    }

    BenchDraft ask(BenchView.Ask question) {
        ask = question;
        mayAct = true;
        return this;
    }

    BenchDraft sign(BenchView.Sign signature) {
        sign = signature;
        mayAct = true;
        return this;
    }

    BenchDraft release(BenchView.Released released) {
        release = released;
        return this;
    }

    BenchDraft run(BenchView.Running running) {
        run = running;
        return this;
    }

    BenchDraft swap(BenchView.Swap turn) {
        swap = turn;
        return this;
    }

    BenchDraft closeOut(List<BenchView.Tap> taps) {
        closeOut = taps;
        return this;
    }

    BenchDraft causes(List<ResetCause> choices) {
        causes = choices;
        return this;
    }

    BenchDraft people(List<BenchView.Named> choices) {
        people = choices;
        return this;
    }

    BenchDraft notices(List<String> words) {
        notices = words;
        return this;
    }

    BenchDraft obstacles(List<Obstacle> found) {
        obstacles = found;
        return this;
    }

    BenchDraft list(List<BenchView.Line> lines) {
        list = lines;
        return this;
    }

    BenchDraft mayAct(boolean may) {
        mayAct = may;
        return this;
    }

    /** Everything that is shown and may change while nobody types. */
    String seen() {
        return stage
                + kicker
                + headline
                + text
                + booking
                + release
                + run
                + swap
                + closeOut
                + notices
                + obstacles
                + list
                + (ask == null ? "" : ask.sheet())
                + (sign == null ? "" : sign.sha256());
    }

    BenchView view(String stamp) {
        boolean typed = ask != null || sign != null || stage == Stage.STOPPED || stage == Stage.RUNNING;
        return new BenchView(
                cell.id().toString(),
                cell.name(),
                StateMarks.of(cell.state()),
                cell.state().words(),
                stage,
                kicker,
                headline,
                text,
                booking,
                ask,
                sign,
                release,
                run,
                swap,
                closeOut,
                people,
                causes,
                notices,
                obstacles,
                list,
                mayAct,
                me.is(Role.BENCH),
                stamp,
                !typed);
    }
}
