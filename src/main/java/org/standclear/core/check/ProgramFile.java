package org.standclear.core.check;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.standclear.core.text.InputText;
import org.standclear.core.text.Reading;

/**
 * A program file as it was brought.
 *
 * @param sha256 of its bytes, 64 hexadecimal characters
 */
public record ProgramFile(String text, String sha256) {

    /** From the file's bytes: UTF-8, at most 8 MiB. */
    public static Reading<ProgramFile> of(byte[] bytes) {
        return InputText.ofProgram(bytes).then(text -> new Reading.Read<>(new ProgramFile(text, sha256(bytes))));
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
