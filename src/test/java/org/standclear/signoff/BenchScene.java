package org.standclear.signoff;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationContext;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.booking.SampleLab;
import org.standclear.cell.DayTests;
import org.standclear.cell.SampleCell;
import org.standclear.people.DutyRegister;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.people.SigningPins;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.ProgramId;
import org.standclear.platform.security.Role;
import org.standclear.program.ProgramUploads;
import org.standclear.program.Revision;
import org.standclear.program.SampleProgram;
import org.standclear.signoff.SignoffDesk.EnterAnswer;
import org.standclear.signoff.SignoffDesk.Entered;
import org.standclear.signoff.SignoffDesk.SignPart;
import org.standclear.signoff.SignoffDesk.Signed;
import org.standclear.signoff.SignoffDesk.Step;
import org.standclear.testing.MovableClock;

/** A cell, a booking on it and the people around it, moved on step by step; people and cell are new each time. */
public final class BenchScene {

    public static final String PIN = "482917";
    public static final String PASSWORD = "a quiet bench by the door";
    public static final Instant START = Instant.parse("2026-03-11T10:07:00Z");

    private static final Map<String, String> HASHES = new ConcurrentHashMap<>();

    public final SampleLab lab;
    public final Person noor;
    public final Person mateo;
    public final Person adaeze;
    public final Person hemi;
    public final Person screen;
    public final CellId cell;
    public final BookingId booking;
    public final SignoffDesk desk;
    public final Preparation preparation;
    public final Bookings bookings;

    private final ApplicationContext application;
    private final MovableClock clock;

    /** The clock is left two minutes after the slot's start; the day test has passed, nothing is attached. */
    public BenchScene(ApplicationContext application) {
        this.application = application;
        lab = new SampleLab(application);
        clock = application.getBean(MovableClock.class);
        desk = application.getBean(SignoffDesk.class);
        preparation = application.getBean(Preparation.class);
        bookings = application.getBean(Bookings.class);
        clock.moveToStart();
        noor = authorised("Noor Candlewick", Role.STUDENT);
        mateo = authorised("Mateo Ironbark", Role.STUDENT);
        adaeze = onDuty(authorised("Adaeze Lanternby", Role.TECHNICIAN));
        hemi = onDuty(authorised("Hemi Coppergate", Role.TECHNICIAN));
        screen = lab.person("Bench screen", password(), Role.BENCH);
        cell = lab.cell(7);
        application.getBean(DayTests.class).record(cell, adaeze.id(), SampleCell.goodReadings());
        booking = lab.booked(cell, START.toString(), noor, mateo).id();
        clock.moveTo(START.plusSeconds(120));
    }

    private BenchScene(BenchScene other, BookingId booking, Person operator, Person attendant) {
        application = other.application;
        lab = other.lab;
        clock = other.clock;
        desk = other.desk;
        preparation = other.preparation;
        bookings = other.bookings;
        noor = operator;
        mateo = attendant;
        adaeze = other.adaeze;
        hemi = other.hemi;
        screen = other.screen;
        cell = other.cell;
        this.booking = booking;
    }

    private Person authorised(String name, Role role) {
        Person person = lab.person(name, password(), role);
        lab.authorise(person.id());
        return person;
    }

    /** Everybody here signs in with {@link #PASSWORD}; it is hashed once, since hashing is slow on purpose. */
    private Password password() {
        return new Password.Hashed(
                HASHES.computeIfAbsent(PASSWORD, application.getBean(PasswordEncoder.class)::encode));
    }

    /** The same cell and staff around another booking; its people stand where Noor and Mateo stood. */
    public BenchScene at(BookingId another, Person operator, Person attendant) {
        return new BenchScene(this, another, operator, attendant);
    }

    /** Plans the person for the whole day and gives them a signing PIN. */
    public Person onDuty(Person person) {
        application
                .getBean(DutyRegister.class)
                .plan(
                        person.id(),
                        MovableClock.START.minus(Duration.ofHours(2)),
                        START.plus(Duration.ofHours(9)),
                        null);
        return person;
    }

    public void choosePins(Person... people) {
        for (Person person : people) {
            application.getBean(SigningPins.class).choose(person.id(), PIN);
        }
    }

    public Booking now() {
        return bookings.find(booking).orElseThrow();
    }

    public BookingState state() {
        return now().state();
    }

    /** A sheet within limits. */
    public Revision upload(String title) {
        return keep(noor, null, SampleProgram.sheet(title));
    }

    public Revision uploadBy(Person author, String title) {
        return keep(author, null, SampleProgram.sheet(title));
    }

    public Revision uploadTooFast() {
        return keep(
                noor, null, SampleProgram.sheet("Too fast").replace("override-percent: 50", "override-percent: 60"));
    }

    /** The next revision of a program, with another title. */
    public Revision next(Revision before, String title) {
        return keep(noor, before.program(), SampleProgram.sheet(title));
    }

    private Revision keep(Person author, @Nullable ProgramId program, String sheet) {
        ProgramUploads.Outcome outcome = application
                .getBean(ProgramUploads.class)
                .upload(new ProgramUploads.UploadProgram(
                        author.id(), program, null, "peg.yaml", sheet.getBytes(StandardCharsets.UTF_8), null));
        if (outcome instanceof ProgramUploads.Uploaded uploaded) {
            return uploaded.revision();
        }
        throw new AssertionError(outcome.toString());
    }

    public BenchScene attached() {
        preparation.attach(booking, upload("Peg and plate").id(), noor.id());
        return this;
    }

    public Revision revision() {
        return application
                .getBean(org.standclear.program.Programs.class)
                .find(java.util.Objects.requireNonNull(now().revision()))
                .orElseThrow();
    }

    public Sheet sheet() {
        return desk.look(booking).sheet().orElseThrow();
    }

    public Entered enter(Part part, Person account, int item, Map<String, String> values) {
        return desk.enter(new EnterAnswer(sheet().id(), part, account.id(), item, values));
    }

    /** The list of who takes the e-stop over, answered; not signed yet. */
    public void answersHandover(Person next) {
        enter(Part.ATTENDANT, next, 1, Map.of("other", "Noor"));
        enter(Part.ATTENDANT, next, 2, Map.of("clothing", "in-order"));
        enter(Part.ATTENDANT, next, 7, Map.of("hand", "on-it"));
    }

    /** The list answered and signed: the e-stop is theirs. */
    public void takesOver(Person next) {
        answersHandover(next);
        Signed signed = sign(Part.ATTENDANT, next);
        if (!(signed instanceof Signed.Kept)) {
            throw new AssertionError(signed.toString());
        }
    }

    public Signed sign(Part part, Person who) {
        return sign(part, who, who, null);
    }

    public Signed sign(Part part, Person account, Person signer, @Nullable String pin) {
        Sheet sheet = sheet();
        Step step = desk.step(sheet, part, account.id());
        if (step instanceof Step.Sign sign) {
            return desk.sign(new SignPart(
                    sheet.id(),
                    part,
                    account.id(),
                    signer.id(),
                    pin,
                    sign.statement().sha256()));
        }
        throw new AssertionError("still asked: " + step);
    }

    /** Answers of a part that agree with everything. */
    public Map<Integer, Map<String, String>> good(Part part, PersonId person) {
        Map<Integer, Map<String, String>> answers = new LinkedHashMap<>();
        if (sheet().list() == SignoffList.SESSION) {
            answers.put(1, Map.of("other", part == Part.OPERATOR ? mateo.printedName() : noor.printedName()));
            answers.put(2, Map.of("clothing", "in-order"));
            answers.put(3, Map.of("line", "nothing-loose"));
            answers.put(4, Map.of("tool", "G-02", "fixture", "as-booked"));
            return answers;
        }
        Map<String, String> display = Map.of("power", "reduced", "override", "50");
        switch (part) {
            case OPERATOR -> {
                answers.put(1, Map.of("fingerprint", revision().fingerprintEnd()));
                answers.put(2, display);
                if (!sheet().brief()) {
                    answers.put(3, Map.of("sensitivity", "level 3"));
                    answers.put(4, Map.of("tool", "G-02", "pull", "tight"));
                    answers.put(5, Map.of("fixture", "clamped"));
                    answers.put(6, Map.of("ends", "passes", "passes", "5"));
                }
            }
            case ATTENDANT -> answers.put(7, Map.of("hand", "on-it"));
            case RELEASER -> {
                answers.put(2, display);
                answers.put(8, Map.of("people", "clear"));
            }
        }
        return answers;
    }

    public Signed answerAndSign(Part part, Person who) {
        answer(part, who, who);
        return sign(part, who);
    }

    public void answer(Part part, Person account, Person who) {
        good(part, who.id()).forEach((item, values) -> {
            Entered entered = enter(part, account, item, values);
            if (!(entered instanceof Entered.Kept)) {
                throw new AssertionError(entered.toString());
            }
        });
    }

    public BenchScene ready() {
        if (now().revision() == null) {
            attached();
        }
        answerAndSign(Part.OPERATOR, noor);
        answerAndSign(Part.ATTENDANT, mateo);
        return this;
    }

    /** Ready, and the bench list signed by operator and attendant. */
    public BenchScene awaitsReleaser() {
        ready();
        answerAndSign(Part.OPERATOR, noor);
        answerAndSign(Part.ATTENDANT, mateo);
        return this;
    }

    public Release released() {
        awaitsReleaser();
        return releasedBy(adaeze);
    }

    public Release releasedBy(Person releaser) {
        Signed signed = answerAndSign(Part.RELEASER, releaser);
        if (signed instanceof Signed.Released released) {
            return released.release();
        }
        throw new AssertionError(signed.toString());
    }
}
