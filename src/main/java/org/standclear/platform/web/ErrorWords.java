package org.standclear.platform.web;

import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.boot.web.error.ErrorAttributeOptions;
import org.springframework.boot.webmvc.error.DefaultErrorAttributes;
import org.springframework.stereotype.Component;
import org.springframework.web.context.request.WebRequest;
import org.standclear.platform.time.LabTime;

/** Adds a sentence to errors that the container found before any page was asked. */
@Component
class ErrorWords extends DefaultErrorAttributes {

    private static final Map<Integer, String> WORDS = Map.of(
            400,
                    "The address or the form has something in it that cannot be read: a broken character, a NUL,"
                            + " a part that is cut off, or far too much text.",
            405, "This address is there, but not for that: open it as a page, or send it from the form it belongs to.",
            406, "This page comes in another form than the one that was asked for.",
            413,
                    "What was sent is too large. A file, program or photo, may have 8 MiB at most, and its name some thousand characters.",
            414, "The address is too long.",
            415, "The form was sent in a way that this page does not read.");

    private static final Pattern BENCH = Pattern.compile("(/bench/[0-9a-f-]{36})(/.*)?");

    private final LabTime time;

    ErrorWords(LabTime time) {
        this.time = time;
    }

    @Override
    public Map<String, Object> getErrorAttributes(WebRequest request, ErrorAttributeOptions options) {
        Map<String, Object> attributes = super.getErrorAttributes(request, options);
        attributes.put("at", now());
        Matcher bench = BENCH.matcher(String.valueOf(attributes.get("path")));
        if (bench.matches()) {
            attributes.put("bench", bench.group(1));
        }
        if (attributes.get("status") instanceof Integer status && WORDS.containsKey(status)) {
            attributes.put("says", String.valueOf(WORDS.get(status)));
        }
        return attributes;
    }

    /** In the lab's zone; when what broke is the very database that knows the zone, in UTC and saying so. */
    private String now() {
        try {
            return time.full(time.now());
        } catch (RuntimeException zoneNotKnown) {
            return time.now()
                    .truncatedTo(ChronoUnit.SECONDS)
                    .toString()
                    .replace("T", " ")
                    .replace("Z", " UTC");
        }
    }
}
