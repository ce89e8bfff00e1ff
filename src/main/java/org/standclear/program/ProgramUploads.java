package org.standclear.program;

import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.ProgramId;

/** Takes program files in. */
public interface ProgramUploads {

    /** The largest file that is taken. */
    int MAX_BYTES = 8 * 1024 * 1024;

    /** Reads the file and its declaration and keeps them as a new revision; bad input is refused and nothing kept. */
    Outcome upload(UploadProgram upload);

    /**
     * A file somebody brings.
     *
     * @param program whose next revision it is; null for a new program. Another author's program is refused as if it
     *     did not exist.
     * @param title null or blank to take the one the file names, else the file's name
     * @param declaration the separate declaration as YAML text with the fields at its top level; null when only the
     *     file declares
     */
    record UploadProgram(
            PersonId author,
            @Nullable ProgramId program,
            @Nullable String title,
            String fileName,
            byte[] bytes,
            @Nullable String declaration) {}

    /** What came of an upload. */
    sealed interface Outcome {}

    /**
     * The file is kept.
     *
     * @param unchanged whether bytes and declaration were those of the latest revision, so that this is that one
     */
    record Uploaded(Revision revision, boolean unchanged) implements Outcome {}

    /** Nothing was kept; says what is wrong and where, and with which field: {@code file} or {@code declaration}. */
    record Refused(String field, String says) implements Outcome {}
}
