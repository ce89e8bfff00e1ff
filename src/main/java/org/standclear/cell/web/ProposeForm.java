package org.standclear.cell.web;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;
import org.springframework.web.multipart.MultipartFile;

/** A proposal as it was typed; an uploaded file goes before the text. */
record ProposeForm(
        @Nullable String formToken,
        @Nullable String file,
        @Nullable MultipartFile upload,
        @Nullable String reason,
        @Nullable String startOffset) {

    private static final int MAX_BYTES = 1024 * 1024;

    static ProposeForm empty() {
        return new ProposeForm(null, null, null, null, "0");
    }

    ProposeForm with(String text) {
        return new ProposeForm(formToken, text, null, reason, startOffset);
    }

    /** The file's text, from the upload or the text area. */
    String fileRead(FormErrors errors) {
        if (upload == null || upload.isEmpty()) {
            String typed = file == null ? "" : file.replace("\r\n", "\n");
            if (typed.isBlank()) {
                errors.add("file", "Choose a cell file, or write it into the field.");
            } else if (typed.getBytes(StandardCharsets.UTF_8).length > MAX_BYTES) {
                errors.add("file", "A cell file may have 1 MiB at most.");
            }
            return typed;
        }
        if (upload.getSize() > MAX_BYTES) {
            errors.add("file", "A cell file may have 1 MiB at most; this one has " + upload.getSize() + " bytes.");
            return file == null ? "" : file;
        }
        return decoded(upload, errors);
    }

    private static String decoded(MultipartFile upload, FormErrors errors) {
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(upload.getBytes()))
                    .toString();
        } catch (CharacterCodingException wrongEncoding) {
            errors.add("file", "The file is not UTF-8 text. Save it as UTF-8 and choose it again.");
        } catch (IOException unreadable) {
            errors.add("file", "The file did not arrive whole. Choose it again.");
        }
        return "";
    }

    /** Minutes after the half hour. */
    int offsetRead(FormErrors errors) {
        String typed = startOffset == null ? "" : startOffset.strip();
        if (!typed.matches("[0-2]?\\d")) {
            errors.add("startOffset", "Type a whole number of minutes, 0 to 29.");
            return 0;
        }
        return Integer.parseInt(typed);
    }
}
