package org.standclear.demo;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.check.BenchFacts;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.program.Revision;
import org.standclear.run.CloseOutItem;
import org.standclear.run.ResetCause;
import org.standclear.run.RunEvent;
import org.standclear.run.RunLog;
import org.standclear.run.Runs;
import org.standclear.signoff.ItemField;
import org.standclear.signoff.ListItem;
import org.standclear.signoff.Part;
import org.standclear.signoff.Preparation.Prepared;
import org.standclear.signoff.Release;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.SignoffDesk;
import org.standclear.signoff.SignoffDesk.EnterAnswer;
import org.standclear.signoff.SignoffDesk.Entered;
import org.standclear.signoff.SignoffDesk.SignPart;
import org.standclear.signoff.SignoffDesk.Signed;
import org.standclear.signoff.SignoffDesk.Standing;
import org.standclear.signoff.SignoffDesk.Step;

/** Stands at the cell for the people of the demo: answers the lists, signs with each one's own sign-in, logs the run. */
@Component
@Profile("demo")
class DemoBench {

    private final SignoffDesk signoff;
    private final RunLog log;
    private final Runs runs;
    private final DemoCells cells;
    private final DemoPace pace;

    DemoBench(SignoffDesk signoff, RunLog log, Runs runs, DemoCells cells, DemoPace pace) {
        this.signoff = signoff;
        this.log = log;
        this.runs = runs;
        this.cells = cells;
        this.pace = pace;
    }

    void look(BookingId booking) {
        signoff.look(booking);
    }

    /** Operator and attendant answer and sign the session list. */
    void session(BookingId id, Roster roster) {
        Standing standing = signoff.look(id);
        Sheet sheet = sheet(standing);
        Map<String, String> known = known(standing.prepared(), roster);
        known.put("other", firstName(sheet.attendant(), roster));
        part(sheet, Part.OPERATOR, sheet.operator(), known);
        known.put("other", firstName(sheet.operator(), roster));
        part(sheet, Part.ATTENDANT, sheet.attendant(), known);
    }

    /** All three answer and sign the bench list. */
    Release release(BookingId id, Roster roster) {
        return Expect.that(Signed.Released.class, benchList(id, roster, Map.of()), "the release")
                .release();
    }

    /** The same, but the releaser reads another override than the operator. */
    void refuse(BookingId id, Roster roster) {
        Expect.that(Signed.NotReleased.class, benchList(id, roster, Map.of("override", "100")), "the refused release");
    }

    private Signed benchList(BookingId id, Roster roster, Map<String, String> readByReleaser) {
        Standing standing = signoff.look(id);
        Sheet sheet = sheet(standing);
        Map<String, String> known = known(standing.prepared(), roster);
        part(sheet, Part.OPERATOR, sheet.operator(), known);
        part(sheet, Part.ATTENDANT, sheet.attendant(), known);
        known.putAll(readByReleaser);
        return part(sheet, Part.RELEASER, releaser(id), known);
    }

    private PersonId releaser(BookingId id) {
        List<PersonId> may = signoff.mayRelease(id);
        if (may.isEmpty()) {
            throw new IllegalStateException("the demo's script: nobody may release booking " + id);
        }
        return may.get(0);
    }

    private static Sheet sheet(Standing standing) {
        return standing.sheet()
                .orElseThrow(() -> new IllegalStateException("the demo's script: no list is due: "
                        + standing.prepared().says() + " " + standing.obstacles()));
    }

    private Map<String, String> known(Prepared prepared, Roster roster) {
        Booking booking = prepared.booking();
        Revision revision = prepared.revision();
        if (revision == null || prepared.answer() == null) {
            throw new IllegalStateException("the demo's script: a booking came to the cell without a checked program");
        }
        BenchFacts facts = prepared.answer().bench();
        Map<String, String> known = new HashMap<>();
        known.put("tool", cells.facts(booking.cell()).fittedTool());
        known.put("fingerprint", revision.fingerprintEnd());
        known.put("power", "reduced");
        known.put("override", whole(facts.overridePercent()));
        known.put("sensitivity", DemoCells.SENSITIVITY);
        known.put("ends", "passes");
        known.put("passes", facts.loop() == null ? "1" : facts.loop());
        return known;
    }

    private static String whole(@Nullable Double percent) {
        return percent == null ? "" : String.valueOf(Math.round(percent));
    }

    private Signed part(Sheet sheet, Part part, PersonId person, Map<String, String> known) {
        Step step = signoff.step(sheet, part, person);
        while (step instanceof Step.Ask ask) {
            ListItem item = ask.item();
            pace.takes(4, 9);
            var entered = signoff.enter(new EnterAnswer(sheet.id(), part, person, item.number(), answers(item, known)));
            Expect.that(Entered.Kept.class, entered, "answering item " + item.number() + " as " + part.words());
            step = signoff.step(sheet, part, person);
        }
        String statement = ((Step.Sign) step).statement().sha256();
        // reading what is signed; the releaser looks at the people and the display first
        pace.takes(part == Part.RELEASER ? 14 : 4, part == Part.RELEASER ? 20 : 8);
        Signed signed = signoff.sign(new SignPart(sheet.id(), part, person, person, null, statement));
        return part == Part.RELEASER ? signed : Expect.that(Signed.Kept.class, signed, "signing as " + part.words());
    }

    /** What is known by the field's name, else the first choice: it is the one that lets the list go on. */
    private static Map<String, String> answers(ListItem item, Map<String, String> known) {
        Map<String, String> answers = new HashMap<>();
        for (ItemField field : item.fields()) {
            String first =
                    field.choices().isEmpty() ? "" : field.choices().get(0).value();
            answers.put(field.name(), known.getOrDefault(field.name(), first));
        }
        return answers;
    }

    private static String firstName(PersonId person, Roster roster) {
        String name = roster.seed(person).printedName();
        return name.substring(0, name.indexOf(' '));
    }

    void start(BookingId booking, Release release) {
        kept(log.start(booking, release.code(), release.operator()), "the start");
        if (release.firstRun()) {
            pace.takes(20, 40);
            PersonId watcher = release.releaser();
            kept(log.watched(booking, new RunLog.Witness(watcher, watcher, null)), "watching the first run");
        }
    }

    void stop(CellId cell, RunEvent.Kind kind, PersonId by) {
        log.stop(cell, kind, by);
    }

    void reset(BookingId booking, ResetCause cause, String words, PersonId by) {
        kept(log.reset(booking, cause, words, new RunLog.Witness(by, by, null)), "the reset");
    }

    /** Motion ends; the cell is handed back item by item when closing out. */
    void finish(BookingId booking, int passes, PersonId by) {
        kept(log.finish(booking, passes, by), "the finish");
    }

    void closeOut(BookingId booking, PersonId by) {
        for (CloseOutItem item : CloseOutItem.values()) {
            boolean armStopped =
                    runs.events(booking).stream().anyMatch(event -> event.kind() == RunEvent.Kind.PROTECTIVE_STOP);
            kept(log.closeOut(booking, item, item.choices(armStopped).get(0).value(), by), "close-out " + item);
        }
    }

    private static void kept(RunLog.Logged logged, String act) {
        Expect.that(RunLog.Logged.Kept.class, logged, act);
    }
}
