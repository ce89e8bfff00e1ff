package org.standclear.core.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class InputTextTests {

    @Test
    void readsUtf8() {
        byte[] bytes = "title: Größe \uFFFD \uD83E\uDD16".getBytes(StandardCharsets.UTF_8);

        assertThat(InputText.ofProgram(bytes).value()).isEqualTo("title: Größe \uFFFD \uD83E\uDD16");
    }

    @Test
    void refusesOtherEncodingsAndNamesTheLine() {
        byte[] latin = "title: plate\npoint: Größe".getBytes(StandardCharsets.ISO_8859_1);
        byte[] utf16 = "title: plate".getBytes(StandardCharsets.UTF_16);

        assertThat(refusal(latin)).isEqualTo("line 2: the file is not UTF-8 text; save it with the encoding UTF-8");
        assertThat(refusal(utf16)).startsWith("line 1: the file is not UTF-8");
    }

    @Test
    void refusesWhatUtf8Forbids() {
        byte[][] forbidden = {
            {(byte) 0xC0, (byte) 0x80}, // an overlong zero
            {(byte) 0xED, (byte) 0xA0, (byte) 0x80}, // half a pair
            {(byte) 0xF4, (byte) 0x90, (byte) 0x80, (byte) 0x80}, // beyond the last character
            {(byte) 0xE2, (byte) 0x82}, // cut short
        };
        for (byte[] bytes : forbidden) {
            assertThat(refusal(bytes)).contains("not UTF-8");
        }
    }

    private static String refusal(byte[] bytes) {
        return InputText.ofProgram(bytes).badInput().orElseThrow().sentence();
    }

    @Test
    void refusesAFileThatIsTooLong() {
        byte[] longest = new byte[InputText.PROGRAM_BYTES];
        Arrays.fill(longest, (byte) 'a');
        assertThat(InputText.ofProgram(longest).badInput()).isEmpty();
        assertThat(refusal(Arrays.copyOf(longest, longest.length + 1))).contains("8388609 bytes", "8 MiB");
        assertThat(InputText.ofOther(longest).badInput().orElseThrow().says()).contains("1 MiB");
        assertThat(InputText.ofOther(Arrays.copyOf(longest, InputText.OTHER_BYTES))
                        .badInput())
                .isEmpty();
    }

    @Test
    void refusesALineThatWouldKeepAReaderForMinutes() {
        String longest = "a".repeat(InputText.LONGEST_LINE);

        assertThat(InputText.plain(longest + "\n" + longest + "\n")).endsWith("a\n");
        assertThatThrownBy(() -> InputText.plain("title: x\n" + longest + "a"))
                .isInstanceOf(BadInputException.class)
                .hasMessageContaining("longer than 10000 characters");
    }
}
