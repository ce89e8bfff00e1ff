package org.standclear.core.program;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.standclear.core.text.BadInputException;
import org.standclear.core.text.Fields;
import org.standclear.core.text.Reading;
import org.standclear.core.text.YamlNode;
import org.standclear.core.text.YamlReader;

/** Reads motion sheets (YAML, {@code motion-sheet: 1}). */
public final class MotionSheetReader implements ProgramReader {

    private static final List<String> FIELDS = List.of("motion-sheet", "title", "declare", "points", "start", "steps");

    @Override
    public String name() {
        return "motion-sheet";
    }

    @Override
    public Reading<MotionPlan> read(String text) {
        return Reading.of(() -> plan(text));
    }

    private MotionPlan plan(String text) {
        SheetPoints points = new SheetPoints();
        SheetSteps steps = new SheetSteps();
        YamlNode.Mapping top = YamlReader.read(text, Map.of("points", points::take, "steps", steps::take));
        Fields sheet = Fields.of(top, "a motion sheet", FIELDS);
        sheet.wholeNumber("motion-sheet", 1, 1);
        requireMapping(sheet);
        sheet.list("steps");
        List<StatedDeclaration> stated = stated(sheet, text);
        stated.forEach(statement -> requireStart(statement, points.byName()));
        return new MotionPlan(
                name(),
                sheet.textIfGiven("title"),
                points.byName(),
                steps.resolved(points.byName(), sheet.lineOf("steps")),
                stated,
                List.of(),
                coverage(text),
                List.of());
    }

    private static void requireMapping(Fields sheet) {
        if (sheet.has("points") && !(sheet.node("points") instanceof YamlNode.Mapping)) {
            throw new BadInputException(
                    sheet.lineOf("points"),
                    "points needs named points, such as \"home: {x: 0, y: 300, z: 80, yaw: 0}\"");
        }
    }

    private static List<StatedDeclaration> stated(Fields sheet, String text) {
        List<StatedDeclaration> stated = new ArrayList<>();
        CommentDeclaration.in(text, "#").ifPresent(stated::add);
        if (sheet.has("start")) {
            Declaration start = new Declaration(null, null, null, null, null, null, null, sheet.text("start"));
            stated.add(
                    new StatedDeclaration("the sheet", start, Map.of(DeclarationField.START, sheet.lineOf("start"))));
        }
        if (sheet.has("declare")) {
            stated.add(DeclarationReader.stated(sheet.node("declare"), "the sheet"));
        }
        return stated;
    }

    /** Refuses a start that is none of the points. */
    static void requireStart(StatedDeclaration statement, Map<String, Point> points) {
        String start = statement.values().start();
        if (start != null && !points.containsKey(start)) {
            throw new BadInputException(
                    statement.lineOf(DeclarationField.START),
                    "start names " + SheetSteps.undefined(start, points.keySet()));
        }
    }

    /** Every line counts that says something; a sheet is understood as a whole or refused. */
    private static MotionPlan.Coverage coverage(String text) {
        int lines = (int) text.lines()
                .filter(line -> !line.isBlank() && !line.stripLeading().startsWith("#"))
                .count();
        return new MotionPlan.Coverage(lines, lines, List.of());
    }
}
