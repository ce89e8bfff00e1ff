package org.standclear.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** Whoever types the command for the demo reads where it is and who can sign in. */
class DemoNoticeTests {

    @Test
    void printsTheAddressAndEveryAccount() {
        DemoAccounts accounts = new DemoAccounts();
        ByteArrayOutputStream printed = new ByteArrayOutputStream();
        new DemoNotice(accounts).print(new PrintStream(printed, true, StandardCharsets.UTF_8), 8123);
        String notice = printed.toString(StandardCharsets.UTF_8);

        assertThat(notice)
                .contains("http://localhost:8123/")
                .contains("password: quillhaven-bench-114")
                .contains("signing PIN: 271828");
        assertThat(accounts.accounts()).extracting(account -> account.login()).contains("noor", "adaeze", "marit");
        for (var account : accounts.accounts()) {
            assertThat(notice.lines())
                    .as(account.login())
                    .anyMatch(line -> line.strip().startsWith(account.login() + " ")
                            && line.contains(account.printedName())
                            && line.endsWith(account.does()));
        }
    }
}
