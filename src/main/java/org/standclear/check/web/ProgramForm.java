package org.standclear.check.web;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.web.multipart.MultipartFile;
import org.standclear.program.ProgramUploads;

/**
 * A program as it was brought: chosen, uploaded or pasted, with what it declares.
 *
 * @param program which of the person's programs it belongs to; empty for a new one
 * @param cell where to check it; not looked at by an upload alone
 * @param course under whose limits; empty for the default ones
 */
record ProgramForm(
        @Nullable String formToken,
        @Nullable String program,
        @Nullable MultipartFile upload,
        @Nullable String pasted,
        @Nullable String programTitle,
        @Nullable String cell,
        @Nullable String course,
        @Nullable String power,
        @Nullable String overridePercent,
        @Nullable String maxToolSpeed,
        @Nullable String tool,
        @Nullable String part,
        @Nullable String partKg,
        @Nullable String loop,
        @Nullable String start,
        @Nullable MultipartFile declarationFile) {

    private static final int DECLARATION_BYTES = 1024 * 1024;
    private static final int LONGEST_PASTED = 256 * 1024;

    static ProgramForm empty(@Nullable String program, @Nullable String cell, @Nullable String course) {
        return new ProgramForm(
                null, program, null, null, null, cell, course, null, null, null, null, null, null, null, null, null);
    }

    /** The same form with the file's text in the field for pasting, as far as it is text: browsers forget the file. */
    ProgramForm withUploadPasted() {
        String text = textOf(upload);
        return new ProgramForm(
                null,
                program,
                null,
                text == null ? pasted : text,
                programTitle,
                cell,
                course,
                power,
                overridePercent,
                maxToolSpeed,
                tool,
                part,
                partKg,
                loop,
                start,
                null);
    }

    private static @Nullable String textOf(@Nullable MultipartFile file) {
        if (file == null || file.isEmpty() || file.getSize() > LONGEST_PASTED) {
            return null;
        }
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(file.getBytes()))
                    .toString();
        } catch (IOException notText) {
            return null;
        }
    }

    /** Whether a file was chosen or text pasted. */
    boolean bringsFile() {
        return hasFile(upload) || (pasted != null && !pasted.isBlank());
    }

    /** Which field of the form brought what an upload calls {@code file} or {@code declaration}. */
    String fieldOf(String part) {
        return switch (part) {
            case "file" -> hasFile(upload) ? "upload" : "pasted";
            case "declaration" -> "declarationFile";
            default -> part;
        };
    }

    /** Whether something is declared beside the file. */
    public boolean declares() {
        return hasFile(declarationFile) || !declared().empty();
    }

    DeclarationFields declared() {
        return new DeclarationFields(power, overridePercent, maxToolSpeed, tool, part, partKg, loop, start);
    }

    /** The file's bytes as they came, or the pasted text in UTF-8 with plain line ends. */
    byte[] bytes(Map<String, String> errors) {
        if (upload == null || upload.isEmpty()) {
            return pasted == null ? new byte[0] : pasted.replace("\r\n", "\n").getBytes(StandardCharsets.UTF_8);
        }
        if (upload.getSize() > ProgramUploads.MAX_BYTES) {
            errors.put("upload", "The file has " + upload.getSize() + " bytes; 8 MiB is the most.");
            return new byte[0];
        }
        return content(upload, "upload", errors);
    }

    String fileName() {
        String name = upload == null || upload.isEmpty() ? null : upload.getOriginalFilename();
        if (name == null || name.isBlank()) {
            return "pasted.txt";
        }
        // some browsers send the whole path
        return name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
    }

    /** The declaration as YAML text; null when nothing is declared beside the file. */
    @Nullable
    String declaration(Map<String, String> errors) {
        if (declarationFile == null || declarationFile.isEmpty()) {
            return declared().empty() ? null : declared().asYaml(errors);
        }
        if (!declared().empty()) {
            errors.put("declarationFile", "Declare in the fields or by a file, not both.");
        } else if (declarationFile.getSize() > DECLARATION_BYTES) {
            errors.put("declarationFile", "A declaration may have 1 MiB at most.");
        } else {
            return decoded(content(declarationFile, "declarationFile", errors), errors);
        }
        return null;
    }

    private static @Nullable String decoded(byte[] bytes, Map<String, String> errors) {
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException wrongEncoding) {
            errors.put("declarationFile", "The declaration is not UTF-8 text. Save it as UTF-8 and choose it again.");
            return null;
        }
    }

    private static byte[] content(MultipartFile file, String field, Map<String, String> errors) {
        try {
            return file.getBytes();
        } catch (IOException unreadable) {
            errors.put(field, "The file did not arrive whole. Choose it again.");
            return new byte[0];
        }
    }

    private static boolean hasFile(@Nullable MultipartFile file) {
        return file != null && !file.isEmpty();
    }
}
