package org.standclear.program;

import org.standclear.core.text.BadInput;

/** Bad input as a whole sentence for a page. */
final class Sentences {

    private Sentences() {}

    static String of(BadInput bad) {
        String sentence = bad.sentence();
        return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1) + (sentence.endsWith(".") ? "" : ".");
    }
}
