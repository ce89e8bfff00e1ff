package org.standclear.signoff;

import java.time.Instant;
import java.util.UUID;
import org.standclear.platform.ids.PersonId;

/**
 * That a person signed a statement as themselves. Never changed, never deleted.
 *
 * @param printedName the name as it was when signing
 * @param meaning what the signature stands for
 * @param statement word for word what was signed
 * @param statementSha256 of the statement
 * @param agreed whether all answers agreed with what they were compared with
 */
public record Signature(
        UUID id,
        UUID sheet,
        Part part,
        PersonId signer,
        String printedName,
        Instant at,
        String meaning,
        String statement,
        String statementSha256,
        Method method,
        boolean agreed,
        Answers answers) {

    /** How the person showed who they are. */
    public enum Method {
        OWN_SIGN_IN("own sign-in"),
        SIGNING_PIN("signing PIN");

        private final String words;

        Method(String words) {
            this.words = words;
        }

        /** The way as people say it. */
        public String words() {
            return words;
        }
    }
}
