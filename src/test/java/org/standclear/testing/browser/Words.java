package org.standclear.testing.browser;

/** Writes the words of a page as XPath. */
final class Words {

    private Words() {}

    /** The text as an XPath string; XPath has no escape, so a text with both kinds of quotes is joined from parts. */
    static String literal(String text) {
        if (!text.contains("'")) {
            return "'" + text + "'";
        }
        return "concat('" + text.replace("'", "', \"'\", '") + "')";
    }

    /** Elements of a kind whose text, or accessible name when they have one, is the given one. */
    static String named(String element, String name) {
        String text = literal(name);
        return "//" + element + "[normalize-space()=" + text + " or @aria-label=" + text + "]";
    }
}
