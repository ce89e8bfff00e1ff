package org.standclear.platform.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.springframework.mock.web.MockHttpServletResponse;

class TableFileTests {

    @Test
    void beginsWithTheMarkThatTellsTableProgramsWhichLettersTheseAre() throws Exception {
        MockHttpServletResponse response = new MockHttpServletResponse();
        PrintWriter lines = TableFile.begin(response, "people.csv");
        lines.write("name\r\nZoë Łęcka\r\n");
        lines.flush();

        byte[] bytes = response.getContentAsByteArray();
        assertThat(bytes).startsWith(0xEF, 0xBB, 0xBF);
        assertThat(new String(bytes, 3, bytes.length - 3, StandardCharsets.UTF_8))
                .isEqualTo("name\r\nZoë Łęcka\r\n");
        assertThat(response.getContentType()).isEqualTo("text/csv;charset=UTF-8");
        assertThat(response.getHeader("Content-Disposition")).isEqualTo("attachment; filename=\"people.csv\"");
    }
}
