package org.standclear.cell;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.springframework.stereotype.Component;

/** Reads the fields of a cell file that cells are told apart and tested by. */
@Component
class YamlCellFiles implements CellFiles {

    @Override
    public Reading read(String file) {
        try {
            LoadSettings settings = LoadSettings.builder()
                    .setMaxAliasesForCollections(0)
                    .setAllowDuplicateKeys(false)
                    .build();
            if (new Load(settings).loadFromString(file) instanceof Map<?, ?> fields) {
                return readable(fields);
            }
            return new Reading.Unreadable("The file is not a cell file: it has no fields.");
        } catch (YamlEngineException notYaml) {
            return new Reading.Unreadable("The file is not YAML: " + notYaml.getMessage());
        }
    }

    private static Reading readable(Map<?, ?> fields) {
        if (!(Integer.valueOf(1).equals(fields.get("cell-file"))
                && fields.get("name") instanceof String name
                && fields.get("version") instanceof Integer version
                && fields.get("fitted-tool") instanceof String tool
                && fields.get("limits") instanceof Map<?, ?> limits
                && limits.get("power") instanceof String power
                && limits.get("override-percent") instanceof Number override)) {
            return new Reading.Unreadable(
                    "A cell file needs cell-file: 1, name, version, fitted-tool, limits with power and override-percent.");
        }
        List<CellFacts.Fact> facts = new ArrayList<>();
        add(facts, "Tool speed", limits.get("tool-speed-mm-s"), "mm/s", "ISO 10218-1 reduced speed");
        add(facts, "Override", override, "%", "house rule");
        add(facts, "Power", power, "", "house rule");
        add(facts, "Payload", limits.get("payload-kg"), "kg", "cell");
        return new Reading.Readable(new CellFacts(name, version, tool, power, override.doubleValue(), facts));
    }

    private static void add(
            List<CellFacts.Fact> facts, String label, @Nullable Object value, String unit, String source) {
        if (value != null) {
            String shown = value instanceof Number number ? CellFacts.number(number.doubleValue()) : value.toString();
            facts.add(new CellFacts.Fact(CellFacts.Group.MAIN_LIMIT, label, shown, unit, source));
        }
    }
}
