package org.standclear.run.web;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.check.BenchFacts;
import org.standclear.check.StoredAnswer;
import org.standclear.people.People;
import org.standclear.platform.time.LabTime;
import org.standclear.program.Revision;
import org.standclear.run.web.RunView.Column;
import org.standclear.signoff.Answers;
import org.standclear.signoff.Part;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.Signature;
import org.standclear.signoff.SignoffList;

/** The signed lists of a run, and the three columns: declared, found, read at the bench. */
@Component
class RunSheets {

    private final People people;
    private final LabTime labTime;

    RunSheets(People people, LabTime labTime) {
        this.people = people;
        this.labTime = labTime;
    }

    List<RunView.SheetView> views(List<Sheet> sheets) {
        Map<SignoffList, Integer> rounds = new EnumMap<>(SignoffList.class);
        return sheets.stream()
                .filter(RunSheets::mayBeShown)
                .filter(sheet -> !sheet.signatures().isEmpty())
                .map(sheet -> view(sheet, rounds.merge(sheet.list(), 1, Integer::sum)))
                .toList();
    }

    /** The releaser answers without seeing the operator's answers, so a bench list that is still being signed is not shown. */
    private static boolean mayBeShown(Sheet sheet) {
        return sheet.list() != SignoffList.BENCH || sheet.closed() != null;
    }

    /** Rounds are counted for each list by itself: the first bench list that was signed is the first. */
    private RunView.SheetView view(Sheet sheet, int round) {
        Sheet.Closed closed = sheet.closed();
        String name = sheet.list() == SignoffList.SESSION
                ? "Session list"
                : sheet.brief() ? "Bench list, short" : "Bench list";
        String outcome = closed == null
                ? "open"
                : closed.outcome().words() + (closed.because().isEmpty() ? "" : ": " + closed.because());
        return new RunView.SheetView(
                name + ", round " + round,
                outcome,
                sheet.signatures().stream().map(this::view).toList());
    }

    private RunView.SignatureView view(Signature signature) {
        return new RunView.SignatureView(
                signature.printedName(),
                signature.part().words(),
                RunView.instant(labTime, signature.at()),
                labTime.iso(signature.at()),
                signature.meaning(),
                signature.method().words(),
                signature.statement(),
                signature.statementSha256());
    }

    /** The columns of the last bench list that was signed; what the operator and the releaser read stand side by side. */
    List<Column> columns(List<Sheet> sheets, Revision revision, StoredAnswer answer, FoundFacts found) {
        Optional<Sheet> last = sheets.stream()
                .filter(RunSheets::mayBeShown)
                .filter(sheet -> sheet.list() == SignoffList.BENCH)
                .filter(sheet -> sheet.signedBy(Part.OPERATOR).isPresent())
                .reduce((one, later) -> later);
        Optional<Sheet> full = sheets.stream()
                .filter(RunSheets::mayBeShown)
                .filter(sheet -> sheet.list() == SignoffList.BENCH && !sheet.brief())
                .filter(sheet -> sheet.signedBy(Part.OPERATOR).isPresent())
                .reduce((one, later) -> later);
        Answers operator = answers(last, Part.OPERATOR);
        Answers releaser = answers(last, Part.RELEASER);
        Answers once = answers(full, Part.OPERATOR);
        BenchFacts declared = answer.bench();
        List<Column> columns = new ArrayList<>();
        columns.add(column(
                "Program, end of fingerprint",
                revision.fingerprintEnd(),
                revision.fingerprintEnd(),
                operator.value(1, "fingerprint")));
        columns.add(column(
                "Power mode",
                declared.power(),
                found.of("Power mode"),
                both(operator.value(2, "power"), releaser.value(2, "power"), "")));
        columns.add(column(
                "Override",
                percent(declared.overridePercent()),
                found.of("Override"),
                both(operator.value(2, "override"), releaser.value(2, "override"), " %")));
        columns.add(column("Tool", declared.tool(), found.of("Tool"), once.value(4, "tool")));
        columns.add(column("Ends", passes(declared.loop()), found.of("Passes"), ends(once)));
        columns.add(column("Payload", kg(declared.payloadKg()), null, ""));
        columns.add(column("Collision sensitivity", null, null, once.value(3, "sensitivity")));
        return columns;
    }

    private static Answers answers(Optional<Sheet> sheet, Part part) {
        return sheet.flatMap(one -> one.signedBy(part)).map(Signature::answers).orElse(Answers.none());
    }

    private static Column column(String item, @Nullable String declared, @Nullable String found, String read) {
        boolean differs = declared != null
                && !read.isEmpty()
                && !read.equalsIgnoreCase(declared)
                && !read.startsWith(declared + ", ");
        return new Column(
                item,
                Objects.requireNonNullElse(declared, ""),
                Objects.requireNonNullElse(found, ""),
                read,
                differs ? "disagrees" : read.isEmpty() ? "waiting" : "agrees");
    }

    /** One value when both read the same, else both with who read which. */
    private static String both(String operator, String releaser, String unit) {
        if (operator.isEmpty()) {
            return "";
        }
        if (releaser.isEmpty()) {
            return operator + unit;
        }
        return operator.equals(releaser)
                ? operator + unit + ", read twice"
                : operator + unit + " by the operator, " + releaser + unit + " by the releaser";
    }

    private static String ends(Answers answers) {
        return answers.value(6, "ends").isEmpty()
                ? ""
                : "forever".equals(answers.value(6, "ends")) ? passes("forever") : passes(answers.value(6, "passes"));
    }

    private static String passes(@Nullable String loop) {
        if (loop == null || loop.equals("1")) {
            return "after 1 pass";
        }
        return loop.equals("forever") ? "loops until it is stopped" : "after " + loop + " passes";
    }

    private static @Nullable String percent(@Nullable Double value) {
        return value == null ? null : BenchCards.number(value, 3) + " %";
    }

    private static @Nullable String kg(@Nullable Double value) {
        return value == null ? null : BenchCards.number(value, 3) + " kg";
    }
}
