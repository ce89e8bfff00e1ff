package org.standclear.testing.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.FormElement;

/**
 * An answer of the application.
 *
 * @param location where a redirect points to, as a path with its query; empty when it is none
 */
public record WebPage(int status, String path, String location, String html) {

    /** The page through a parser. */
    public Document document() {
        return Jsoup.parse(html);
    }

    /** The title of the page. */
    public String title() {
        return document().title();
    }

    /** Everything that can be read on the page. */
    public String text() {
        return document().body().text();
    }

    /** The form with that action, or else the first whose action begins so; fails when there is none. */
    public WebForm form(String action) {
        List<FormElement> forms = document().forms().stream()
                .filter(form -> form.attr("action").startsWith(action))
                .sorted(Comparator.comparing(form -> !form.attr("action").equals(action)))
                .toList();
        if (!forms.isEmpty()) {
            return new WebForm(forms.get(0).attr("action"), valuesOf(forms.get(0)));
        }
        throw new AssertionError(
                "no form for " + action + " on " + path + " (" + status + "), which reads:\n" + text());
    }

    private static Map<String, String> valuesOf(FormElement form) {
        Map<String, String> values = new LinkedHashMap<>();
        form.formData().forEach(field -> values.put(field.key(), field.value()));
        return values;
    }

    /**
     * A form as it stands on the page.
     *
     * @param values all fields that a browser would send, the hidden ones too
     */
    public record WebForm(String action, Map<String, String> values) {

        public WebForm {
            values = new LinkedHashMap<>(values);
        }

        /** The same form with one field filled in. */
        public WebForm with(String field, String value) {
            Map<String, String> more = new LinkedHashMap<>(values);
            more.put(field, value);
            return new WebForm(action, more);
        }

        /** The fields as a browser would send them. */
        public String encoded() {
            return values.entrySet().stream()
                    .map(field -> encode(field.getKey()) + "=" + encode(field.getValue()))
                    .collect(Collectors.joining("&"));
        }

        private static String encode(String text) {
            return URLEncoder.encode(text, StandardCharsets.UTF_8);
        }
    }
}
