package org.standclear.trail;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;

class EntryHashTests {

    private static final LabId LAB = LabId.of("00000000-0000-7000-8000-000000000001");
    private static final PersonId NOOR = PersonId.of("01890a5d-ac96-774b-bcce-b302099a8057");

    private static StoredEntry entry(String subject, String words, @Nullable PersonId actor) {
        return new StoredEntry(
                LAB,
                1,
                Instant.parse("2026-03-11T09:00:00.5Z"),
                "booking.made",
                subject,
                actor,
                words,
                "{\"cell\":\"Avocet\"}",
                EntryHash.NONE,
                "");
    }

    /**
     * NIST, "Cryptographic Standards and Guidelines, Examples with Intermediate Values", SHA-256 of the one-block
     * message "abc" and of the two-block message, for FIPS 180-4; the empty message is SHA256ShortMsg.rsp, Len = 0, of
     * the CAVP test vectors (grade S).
     */
    @ParameterizedTest
    @CsvSource({
        "abc, ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
        "'', e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
        "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq,"
                + " 248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1"
    })
    void hashesThePublishedMessagesAsPublished(String message, String digest) {
        assertThat(Sha256.of(message.getBytes(StandardCharsets.US_ASCII))).isEqualTo(digest);
    }

    @Test
    void writesEachFieldWithItsLength() {
        assertThat(new String(EntryHash.canonical(entry("b-1", "Noor booked ä", NOOR)), StandardCharsets.UTF_8))
                .isEqualTo("18:standclear-trail-1\n"
                        + "36:00000000-0000-7000-8000-000000000001\n"
                        + "1:1\n"
                        + "27:2026-03-11T09:00:00.500000Z\n"
                        + "12:booking.made\n"
                        + "3:b-1\n"
                        + "36:01890a5d-ac96-774b-bcce-b302099a8057\n"
                        + "14:Noor booked ä\n"
                        + "17:{\"cell\":\"Avocet\"}\n"
                        + "64:0000000000000000000000000000000000000000000000000000000000000000\n");
    }

    /** Computed with Python's hashlib over the same bytes; docs/trail.md shows the program. */
    @Test
    void givesTheHashThatAnotherProgramGives() {
        assertThat(EntryHash.of(entry("b-1", "Noor booked ä", NOOR)))
                .isEqualTo("db28dc068b1b6623217b42c7fc580f5da4f58407924eabd774e686568eda5f7e");
    }

    @Test
    void tellsApartWhatJoinedTextWouldConfuse() {
        assertThat(EntryHash.of(entry("ab", "c", null))).isNotEqualTo(EntryHash.of(entry("a", "bc", null)));
        assertThat(EntryHash.of(entry("a\n1:b", "", null))).isNotEqualTo(EntryHash.of(entry("a", "1:b", null)));
        assertThat(EntryHash.of(entry("a", "b", null))).isNotEqualTo(EntryHash.of(entry("a", "b", NOOR)));
    }
}
