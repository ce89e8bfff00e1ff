package org.standclear.core.cell;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.standclear.core.arm.Arm;
import org.standclear.core.geometry.Vector;
import org.standclear.core.text.BadInputException;
import org.standclear.core.text.Fields;
import org.standclear.core.text.NumberRule;
import org.standclear.core.text.Reading;
import org.standclear.core.text.Words;
import org.standclear.core.text.YamlNode;
import org.standclear.core.text.YamlReader;

/** Reads a cell file (YAML, {@code cell-file: 1}). */
public final class CellFileReader {

    private static final List<String> FIELDS =
            List.of("cell-file", "name", "version", "arm", "tools", "fitted-tool", "parts", "limits");
    private static final List<String> TOOL_FIELDS = List.of("code", "mass-kg", "offset-mm", "overhang-mm", "edges");
    private static final List<String> PART_FIELDS = List.of("name", "mass-kg");
    private static final int LATEST_VERSION = 1_000_000;

    private CellFileReader() {}

    /** The cell that the text describes. */
    public static Reading<CellDescription> read(String text) {
        return Reading.of(() -> cell(YamlReader.read(text)));
    }

    private static CellDescription cell(YamlNode.Mapping top) {
        Fields file = Fields.of(top, "a cell file", FIELDS);
        file.wholeNumber("cell-file", 1, 1);
        String name = file.text("name");
        int version = file.wholeNumber("version", 1, LATEST_VERSION);
        Fields armFields = ArmFields.of(file.node("arm"));
        Arm arm = ArmFields.arm(armFields);
        List<Tool> tools = tools(file);
        return new CellDescription(
                name,
                version,
                arm,
                ArmFields.facts(armFields),
                tools,
                fitted(file, tools),
                file.has("parts") ? parts(file) : List.of(),
                LimitFields.limits(file));
    }

    private static List<Part> parts(Fields file) {
        List<Part> parts = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (YamlNode node : file.list("parts")) {
            Fields part = Fields.of(node, "a part", PART_FIELDS);
            String name = part.text("name");
            if (!names.add(name)) {
                throw new BadInputException(
                        node.line(), "the part " + Words.quoted(name) + " stands here a second time");
            }
            parts.add(new Part(name, part.number("mass-kg", NumberRule.NOT_BELOW_ZERO)));
        }
        return parts;
    }

    private static List<Tool> tools(Fields file) {
        List<Tool> tools = new ArrayList<>();
        Set<String> codes = new HashSet<>();
        for (YamlNode node : file.list("tools")) {
            Tool tool = tool(Fields.of(node, "a tool", TOOL_FIELDS));
            if (!codes.add(tool.code())) {
                throw new BadInputException(
                        node.line(), "the tool code " + Words.quoted(tool.code()) + " stands here a second time");
            }
            tools.add(tool);
        }
        return tools;
    }

    private static Tool tool(Fields tool) {
        List<Double> offset = tool.numbers("offset-mm", 3, NumberRule.ANY);
        return new Tool(
                tool.text("code"),
                tool.number("mass-kg", NumberRule.NOT_BELOW_ZERO),
                new Vector(offset.get(0), offset.get(1), offset.get(2)),
                tool.number("overhang-mm", NumberRule.NOT_BELOW_ZERO),
                tool.flag("edges"));
    }

    private static Tool fitted(Fields file, List<Tool> tools) {
        String code = file.text("fitted-tool");
        return tools.stream()
                .filter(tool -> tool.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new BadInputException(
                        file.lineOf("fitted-tool"),
                        "the fitted tool " + Words.quoted(code) + " is not among the tools: "
                                + Words.allOf(
                                        tools.stream().map(Tool::code).limit(20).toList())));
    }
}
