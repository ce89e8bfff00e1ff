package org.standclear.core.text;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.ScalarEvent;

/**
 * Reads a YAML text strictly: one document, a mapping at its top, no anchors, aliases, tags or duplicate keys, at most
 * {@value #MOST_LEVELS} levels. The children of chosen top-level fields are handed over one by one as they are read,
 * so that a long list never stands in memory as a whole.
 */
public final class YamlReader {

    private static final int MOST_LEVELS = 32;

    /** Enough for every cell file, and a bound for what a hostile text can make of a small file. */
    private static final int MOST_NODES = 200_000;

    private final YamlEvents events;
    private final Map<String, EachChild> streamed;
    private int nodes;

    private YamlReader(String text, Map<String, EachChild> streamed) {
        this.events = new YamlEvents(InputText.withoutControls(text));
        this.streamed = streamed;
    }

    /** Takes the children of a top-level list or mapping, one at a time. */
    @FunctionalInterface
    public interface EachChild {

        /** A value with its name; the name of a list's item is an empty text. */
        void take(YamlNode.Scalar name, YamlNode value);
    }

    /** Reads the whole text. */
    public static YamlNode.Mapping read(String text) {
        return read(text, Map.of());
    }

    /**
     * Reads the text; the children of the named top-level fields go to their takers, and the result holds an empty
     * list or mapping in their place.
     */
    public static YamlNode.Mapping read(String text, Map<String, EachChild> streamed) {
        InputText.requireSize(text.length(), InputText.PROGRAM_BYTES);
        return new YamlReader(text, streamed).document();
    }

    private YamlNode.Mapping document() {
        events.require(Event.ID.StreamStart);
        if (events.peek().getEventId() == Event.ID.StreamEnd) {
            throw new BadInputException(0, "the file is empty");
        }
        events.documentStart();
        Event first = events.next();
        if (first.getEventId() != Event.ID.MappingStart) {
            throw new BadInputException(events.line(), "the file must begin with a field, such as \"title: ...\"");
        }
        YamlNode.Mapping top = mapping((CollectionStartEvent) first, 1, streamed);
        events.require(Event.ID.DocumentEnd);
        if (events.peek().getEventId() != Event.ID.StreamEnd) {
            events.next();
            throw new BadInputException(events.line(), "a second document begins here; write one document a file");
        }
        return top;
    }

    private YamlNode node(Event event, int level) {
        if (level > MOST_LEVELS) {
            throw new BadInputException(
                    events.line(), "values are nested more than " + MOST_LEVELS + " levels deep; write them flat");
        }
        if (++nodes > MOST_NODES) {
            throw new BadInputException(events.line(), "the file has more than " + MOST_NODES + " values");
        }
        if (event instanceof ScalarEvent scalar) {
            return scalar(scalar);
        }
        if (event.getEventId() == Event.ID.MappingStart) {
            return mapping((CollectionStartEvent) event, level, Map.of());
        }
        return sequence((CollectionStartEvent) event, level);
    }

    private YamlNode.Scalar scalar(ScalarEvent scalar) {
        events.refuseTag(scalar.getTag());
        return new YamlNode.Scalar(scalar.getValue(), scalar.isPlain(), events.line());
    }

    private YamlNode.Sequence sequence(CollectionStartEvent start, int level) {
        events.refuseTag(start.getTag());
        int line = events.line();
        List<YamlNode> items = new ArrayList<>();
        for (Event event = events.next(); event.getEventId() != Event.ID.SequenceEnd; event = events.next()) {
            items.add(node(event, level + 1));
        }
        return new YamlNode.Sequence(items, line);
    }

    private YamlNode.Mapping mapping(CollectionStartEvent start, int level, Map<String, EachChild> takers) {
        events.refuseTag(start.getTag());
        int line = events.line();
        Map<String, YamlNode.Entry> entries = new LinkedHashMap<>();
        for (Event event = events.next(); event.getEventId() != Event.ID.MappingEnd; event = events.next()) {
            YamlNode.Scalar key = key(event, level);
            if (entries.containsKey(key.text())) {
                throw duplicate(key);
            }
            EachChild taker = takers.get(key.text());
            YamlNode value = taker == null ? node(events.next(), level + 1) : streamed(events.next(), level + 1, taker);
            entries.put(key.text(), new YamlNode.Entry(key, value));
        }
        return new YamlNode.Mapping(entries, line);
    }

    private YamlNode.Scalar key(Event event, int level) {
        if (event instanceof ScalarEvent && node(event, level) instanceof YamlNode.Scalar key && !key.isNull()) {
            return key;
        }
        throw new BadInputException(events.line(), "a field needs a plain name before its colon");
    }

    private static BadInputException duplicate(YamlNode.Scalar key) {
        return new BadInputException(
                key.line(), Words.quoted(key.text()) + " stands here a second time; write each name once");
    }

    private YamlNode streamed(Event event, int level, EachChild taker) {
        if (event.getEventId() == Event.ID.SequenceStart) {
            return streamedSequence((CollectionStartEvent) event, level, taker);
        }
        if (event.getEventId() == Event.ID.MappingStart) {
            return streamedMapping((CollectionStartEvent) event, level, taker);
        }
        return node(event, level);
    }

    private YamlNode streamedSequence(CollectionStartEvent start, int level, EachChild taker) {
        events.refuseTag(start.getTag());
        int line = events.line();
        for (Event event = events.next(); event.getEventId() != Event.ID.SequenceEnd; event = events.next()) {
            nodes = 0;
            YamlNode item = node(event, level + 1);
            taker.take(new YamlNode.Scalar("", false, item.line()), item);
        }
        return new YamlNode.Sequence(List.of(), line);
    }

    private YamlNode streamedMapping(CollectionStartEvent start, int level, EachChild taker) {
        events.refuseTag(start.getTag());
        int line = events.line();
        Set<String> names = new HashSet<>();
        for (Event event = events.next(); event.getEventId() != Event.ID.MappingEnd; event = events.next()) {
            nodes = 0;
            YamlNode.Scalar key = key(event, level);
            if (!names.add(key.text())) {
                throw duplicate(key);
            }
            taker.take(key, node(events.next(), level + 1));
        }
        return new YamlNode.Mapping(Map.of(), line);
    }
}
