package org.standclear.core.text;

import java.util.Iterator;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.DocumentStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;

/** The parser's events one after the other, with the line they begin on; refuses what no file of ours needs. */
final class YamlEvents {

    /** The parser counts characters and refuses above its limit; the size in bytes was checked before. */
    private static final LoadSettings SETTINGS = LoadSettings.builder()
            .setLabel("file")
            .setCodePointLimit(InputText.PROGRAM_BYTES + 1)
            .build();

    private final Iterator<Event> events;
    private @Nullable Event ahead;
    private int line = 1;

    YamlEvents(String text) {
        this.events = new Parse(SETTINGS).parseString(text).iterator();
    }

    /** The line of the event that was taken last, counted from 1. */
    int line() {
        return line;
    }

    Event peek() {
        if (ahead == null) {
            ahead = pull();
        }
        return ahead;
    }

    Event next() {
        Event event = peek();
        ahead = null;
        line = event.getStartMark().map(mark -> mark.getLine() + 1).orElse(line);
        if (event instanceof AliasEvent) {
            throw new BadInputException(line, "aliases (*name) are not read; write the values out");
        }
        if (event instanceof NodeEvent node && node.getAnchor().isPresent()) {
            throw new BadInputException(line, "anchors (&name) are not read; write the values out");
        }
        return event;
    }

    void require(Event.ID id) {
        Event event = next();
        if (event.getEventId() != id) {
            throw new BadInputException(line, "the file ends or goes on where it should not");
        }
    }

    void documentStart() {
        if (next() instanceof DocumentStartEvent start && start.getTags().isEmpty()) {
            return;
        }
        throw new BadInputException(line, "tags are not read; leave the %TAG line out");
    }

    void refuseTag(Optional<String> tag) {
        if (tag.isPresent()) {
            throw new BadInputException(line, "tags (!name) are not read; write the value without one");
        }
    }

    private Event pull() {
        try {
            return events.next();
        } catch (MarkedYamlEngineException e) {
            throw new BadInputException(
                    e.getProblemMark().map(Mark::getLine).map(at -> at + 1).orElse(line), "not YAML: " + problem(e));
        } catch (BadInputException e) {
            throw e;
        } catch (RuntimeException e) {
            // the parser has no promise about what it throws for escapes and directives it cannot hold
            throw new BadInputException(line, "not YAML: what follows here cannot be read");
        }
    }

    private static String problem(MarkedYamlEngineException e) {
        String problem = e.getProblem() == null ? "this cannot be read" : e.getProblem();
        String line = problem.replaceAll("\\s+", " ").strip();
        return (line.length() > 160 ? line.substring(0, 160) + "..." : line)
                + "; look at indentation, colons, brackets";
    }
}
