package org.standclear.report.web;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.check.BenchFacts;
import org.standclear.check.CheckWords;
import org.standclear.check.ProgramChecks;
import org.standclear.check.StoredAnswer;
import org.standclear.platform.ids.AnswerId;
import org.standclear.platform.time.LabTime;
import org.standclear.program.Programs;
import org.standclear.program.Revision;
import org.standclear.run.Run;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.SignoffRecord;
import org.standclear.signoff.Waiver;
import org.standclear.signoff.Waivers;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What came before the start of a run: booking, program, answers with limits, waivers, signatures in the order of signing. */
@Component
class RunBefore {

    private static final JsonMapper JSON = JsonMapper.builder().build();

    private final Bookings bookings;
    private final Programs programs;
    private final ProgramChecks checks;
    private final SignoffRecord signed;
    private final Waivers waivers;
    private final LabTime labTime;

    RunBefore(
            Bookings bookings,
            Programs programs,
            ProgramChecks checks,
            SignoffRecord signed,
            Waivers waivers,
            LabTime labTime) {
        this.bookings = bookings;
        this.programs = programs;
        this.checks = checks;
        this.signed = signed;
        this.waivers = waivers;
        this.labTime = labTime;
    }

    List<RunPart> of(Run run, Called called) {
        List<Sheet> sheets = signed.sheets(run.booking());
        Set<AnswerId> ids = new LinkedHashSet<>();
        sheets.forEach(sheet -> ids.add(sheet.answer()));
        List<StoredAnswer> answers =
                ids.stream().map(checks::find).flatMap(Optional::stream).toList();
        return List.of(
                booking(run, called),
                programs(sheets, called),
                answers(answers),
                findings(answers),
                waivers(run, called),
                signatures(sheets, called));
    }

    private RunPart booking(Run run, Called called) {
        Booking booking = bookings.find(run.booking()).orElseThrow();
        List<List<String>> rows = List.of(
                List.of("Slot", labTime.day(booking.start()) + ", " + labTime.span(booking.start(), booking.end())),
                List.of("Operator", called.name(booking.operator())),
                List.of("E-stop attendant at the end", called.name(booking.attendant())),
                List.of("Checked in", full(booking.checkedInAt())),
                List.of("State", booking.state().words()),
                List.of("Booking", booking.id().toString()));
        return RunPart.of("Booking", "", List.of("What", "Value"), rows);
    }

    private RunPart programs(List<Sheet> sheets, Called called) {
        List<List<String>> rows = sheets.stream()
                .map(Sheet::revision)
                .distinct()
                .map(programs::find)
                .flatMap(Optional::stream)
                .map(one -> row(one, called))
                .toList();
        return RunPart.of(
                "Program",
                "No list was opened with a program.",
                List.of("Program", "Revision", "By", "Uploaded", "SHA-256 of file and declaration"),
                rows);
    }

    private List<String> row(Revision one, Called called) {
        return List.of(
                called.text(one.title()),
                "" + one.number(),
                called.name(one.author()),
                labTime.full(one.uploadedAt()),
                one.sha256() + " " + one.declarationSha256());
    }

    private RunPart answers(List<StoredAnswer> answers) {
        List<List<String>> rows = new ArrayList<>();
        for (StoredAnswer answer : answers) {
            BenchFacts bench = answer.bench();
            String of = answer.verdict().words() + ", " + labTime.full(answer.at());
            rows.add(List.of(of, "Cell version, rules", answer.cellVersion() + ", " + answer.ruleSet(), ""));
            rows.add(List.of(
                    of, "Override", number(bench.overridePercent(), " %"), number(bench.overrideLimitPercent(), " %")));
            rows.add(List.of(
                    of,
                    "Tool point, reduced power",
                    number(bench.heldPeakMmS(), " mm/s"),
                    number(bench.toolSpeedLimitMmS(), " mm/s")));
            rows.add(List.of(of, "Tool point, if in full power", number(bench.fullPowerPeakMmS(), " mm/s"), ""));
            rows.add(List.of(
                    of, "Payload with tool", number(bench.payloadKg(), " kg"), number(bench.payloadLimitKg(), " kg")));
            rows.add(List.of(of, "Power mode, tool", text(bench.power()) + ", " + text(bench.tool()), ""));
        }
        return RunPart.of(
                "Answers of the check and limits",
                "No answer of the check is named by a list.",
                List.of("Answer", "What", "Value", "Limit"),
                rows);
    }

    private RunPart findings(List<StoredAnswer> answers) {
        List<List<String>> rows = new ArrayList<>();
        for (StoredAnswer answer : answers) {
            for (JsonNode finding : JSON.readTree(answer.json()).path("findings")) {
                rows.add(List.of(
                        labTime.full(answer.at()),
                        CheckWords.check(finding.path("check").asString("")),
                        finding.path("outcome").asString("").replace('-', ' '),
                        finding.path("says").asString("")));
            }
        }
        return RunPart.of("Findings", "", List.of("Answer of", "Check", "Outcome", "Says"), rows);
    }

    private RunPart waivers(Run run, Called called) {
        List<List<String>> rows = waivers.of(run.booking()).stream()
                .sorted(Comparator.comparing(Waiver::givenAt))
                .map(one -> List.of(
                        labTime.full(one.givenAt()),
                        called.name(one.givenBy()),
                        String.join(", ", one.checks()),
                        called.text(one.reason()) + one.confirmed(),
                        became(one, called)))
                .toList();
        return RunPart.of(
                "Waivers",
                "No failed check was waived.",
                List.of("Given", "By", "Checks", "Reason", "What became of it"),
                rows);
    }

    private String became(Waiver one, Called called) {
        Waiver.TakenBack back = one.takenBack();
        if (back != null) {
            return "taken back " + labTime.full(back.at()) + " by " + called.name(back.by()) + ": "
                    + called.text(back.reason());
        }
        if (one.leavesLinesUnread() && one.usedAt() == null) {
            return "did not count: nobody confirmed the unread lines";
        }
        return one.usedAt() == null ? "expired " + labTime.full(one.expiresAt()) : "used " + full(one.usedAt());
    }

    private RunPart signatures(List<Sheet> sheets, Called called) {
        record Signed(Instant at, List<String> row) {}
        List<List<String>> rows = sheets.stream()
                .flatMap(sheet -> sheet.signatures().stream()
                        .map(one -> new Signed(
                                one.at(),
                                List.of(
                                        labTime.seconds(one.at()),
                                        sheet.list().words() + (sheet.brief() ? " (short)" : "") + ", round "
                                                + sheet.round(),
                                        one.part().words(),
                                        called.withNames() ? one.printedName() : called.name(one.signer()),
                                        one.method().words(),
                                        one.agreed() ? "agreed" : "did not agree"))))
                .sorted(Comparator.comparing(Signed::at))
                .map(Signed::row)
                .toList();
        return RunPart.of(
                "Signatures in the order of signing",
                "Nobody signed.",
                List.of("At", "List", "Part", "Who", "How", "Answers"),
                rows);
    }

    private String full(@Nullable Instant at) {
        return at == null ? "not" : labTime.full(at);
    }

    private static String text(@Nullable String value) {
        return Objects.requireNonNullElse(value, "not declared");
    }

    private static String number(@Nullable Double value, String unit) {
        return value == null
                ? "not known"
                : new java.math.BigDecimal(String.valueOf(value))
                                .setScale(3, java.math.RoundingMode.HALF_UP)
                                .stripTrailingZeros()
                                .toPlainString()
                        + unit;
    }
}
