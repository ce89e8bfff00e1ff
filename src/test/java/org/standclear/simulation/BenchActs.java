package org.standclear.simulation;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.standclear.booking.Booking;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.program.Revision;
import org.standclear.signoff.Part;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.SignoffDesk.EnterAnswer;
import org.standclear.signoff.SignoffDesk.Entered;
import org.standclear.signoff.SignoffDesk.SignPart;
import org.standclear.signoff.SignoffDesk.Step;
import org.standclear.signoff.SignoffList;

/** Answers and signatures at the bench, one tap at a time. */
final class BenchActs {

    private final Lab lab;

    BenchActs(Lab lab) {
        this.lab = lab;
    }

    /** The next tap on the open list, by whoever is due, or by somebody else who thinks they are. */
    String tap(Booking booking, Sheet sheet) {
        Optional<Part> due = sheet.next();
        if (due.isEmpty()) {
            return "all signed, waits";
        }
        Part part = lab.chance.percent(95) ? due.get() : lab.chance.one(List.of(Part.values()));
        Person signer = signer(booking, sheet, part);
        boolean shared = (sheet.round() + part.ordinal()) % 2 == 0;
        Person account = shared != lab.chance.percent(3) ? lab.cast.screen : signer;
        String who = part + " " + signer.printedName() + " ";
        String answers = "";
        boolean inOneGo = lab.chance.percent(60);
        do {
            Step step = lab.doors.desk().step(sheet, part, account.id());
            if (step instanceof Step.Sign sign) {
                return who + answers + sign(sheet, part, account, signer, sign);
            }
            int item = ((Step.Ask) step).item().number();
            Entered entered = lab.doors
                    .desk()
                    .enter(new EnterAnswer(sheet.id(), part, account.id(), item, answer(sheet, part, item)));
            answers += item + " " + Lab.word(entered) + " ";
            inOneGo = inOneGo && entered instanceof Entered.Kept;
        } while (inOneGo);
        return who + answers;
    }

    private String sign(Sheet sheet, Part part, Person account, Person signer, Step.Sign sign) {
        SignPart form = new SignPart(
                sheet.id(),
                part,
                account.id(),
                signer.id(),
                account.equals(signer) ? null : pin(),
                sign.statement().sha256());
        if (lab.chance.percent(6)) {
            lab.unsent.add(form);
            return "filled in, not sent";
        }
        return "signs " + Lab.word(lab.doors.desk().sign(form));
    }

    private String pin() {
        return lab.chance.percent(92) ? Cast.PIN : "000000";
    }

    private Person signer(Booking booking, Sheet sheet, Part part) {
        if (lab.chance.percent(4)) {
            return lab.chance.one(lab.cast.everybody());
        }
        return switch (part) {
            case OPERATOR -> lab.cast.find(sheet.operator());
            case ATTENDANT -> lab.cast.find(sheet.attendant());
            case RELEASER -> releaser(booking);
        };
    }

    private Person releaser(Booking booking) {
        List<PersonId> may = lab.doors.desk().mayRelease(booking.id());
        return may.isEmpty() || lab.chance.percent(10) ? lab.chance.one(lab.cast.staff()) : lab.cast.find(may.get(0));
    }

    /** A form that was filled in before, sent now. */
    String sendOld() {
        SignPart form = lab.unsent.remove(lab.chance.between(0, lab.unsent.size() - 1));
        return form.part() + " " + Lab.word(lab.doors.desk().sign(form));
    }

    private Map<String, String> answer(Sheet sheet, Part part, int item) {
        if (lab.chance.percent(4)) {
            return Map.of("override", "70", "power", "full", "tool", "V-01", "fingerprint", "0000");
        }
        if (sheet.list() == SignoffList.SESSION) {
            return switch (item) {
                case 1 -> Map.of("other", other(sheet, part));
                case 2 -> Map.of("clothing", "in-order");
                case 3 -> Map.of("line", "nothing-loose");
                default -> Map.of("tool", "G-02", "fixture", "as-booked");
            };
        }
        return switch (item) {
            case 1 -> Map.of("fingerprint", fingerprint(sheet));
            case 2 -> Map.of("power", "reduced", "override", override(sheet));
            case 3 -> Map.of("sensitivity", "level 3");
            case 4 -> Map.of("tool", "G-02", "pull", "tight");
            case 5 -> Map.of("fixture", "clamped");
            case 6 -> Map.of("ends", "passes", "passes", "5");
            case 7 -> Map.of("hand", "on-it");
            default -> Map.of("people", lab.chance.percent(95) ? "clear" : "not-clear");
        };
    }

    private String other(Sheet sheet, Part part) {
        return lab.cast
                .find(part == Part.OPERATOR ? sheet.attendant() : sheet.operator())
                .printedName();
    }

    private String fingerprint(Sheet sheet) {
        return lab.doors
                .programs()
                .find(sheet.revision())
                .map(Revision::fingerprintEnd)
                .orElseThrow();
    }

    /** Misread by the second reader now and then, so that two answers disagree. */
    private String override(Sheet sheet) {
        return lab.chance.percent(96) ? Objects.requireNonNullElse(lab.overrides.get(sheet.revision()), "50") : "45";
    }
}
