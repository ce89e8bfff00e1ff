package org.standclear.program;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.ProgramId;
import org.standclear.platform.ids.RevisionId;

/**
 * One immutable revision: these bytes with this declaration.
 *
 * @param number counts from 1 within the program
 * @param sha256 of the file's bytes, 64 hexadecimal characters
 * @param declaration the separate declaration in its canonical text; null when only the file declares
 * @param declarationSha256 of that text; of the empty text when there is none
 */
public record Revision(
        RevisionId id,
        ProgramId program,
        int number,
        String title,
        String fileName,
        PersonId author,
        Instant uploadedAt,
        String sha256,
        int sizeBytes,
        @Nullable String declaration,
        String declarationSha256) {

    /** The last four characters of the fingerprint: what the operator types at the bench. */
    public String fingerprintEnd() {
        return sha256.substring(sha256.length() - 4);
    }
}
