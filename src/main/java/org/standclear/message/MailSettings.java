package org.standclear.message;

import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/**
 * Whether this installation sends e-mail, from whom, and where its pages are.
 *
 * @param from the sender's address; empty switches e-mail off
 * @param site where people reach the pages, without a slash at the end
 */
record MailSettings(String from, String site) {

    /** E-mail is on where both a server and a sender are set up. */
    boolean on() {
        return !from.isBlank();
    }

    /** The right-hand side of a Message-ID (RFC 5322 3.6.4): the sender's domain. */
    String domain() {
        return from.substring(from.lastIndexOf('@') + 1).replace(">", "").strip();
    }

    /** Reads them from the configuration. */
    @Component
    static class Configured {

        private final MailSettings settings;

        Configured(
                @Value("${spring.mail.host:}") String host,
                @Value("${standclear.mail.from:}") String from,
                @Value("${standclear.mail.site:http://localhost:8080}") String site) {
            this.settings = new MailSettings(host.isBlank() ? "" : from, site.replaceAll("/+$", ""));
        }

        MailSettings get() {
            return settings;
        }
    }
}
