package org.standclear.demo;

import java.io.PrintStream;
import java.util.Locale;
import org.springframework.boot.web.server.context.WebServerApplicationContext;
import org.springframework.boot.web.server.context.WebServerInitializedEvent;
import org.springframework.context.annotation.Profile;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/** Prints where the demo is and who can sign in, once it can be visited. */
@Component
@Profile("demo")
class DemoNotice {

    private final DemoAccounts accounts;

    DemoNotice(DemoAccounts accounts) {
        this.accounts = accounts;
    }

    @EventListener
    void print(WebServerInitializedEvent event) {
        if (WebServerApplicationContext.hasServerNamespace(event.getApplicationContext(), "management")) {
            return;
        }
        // for the person who typed the command, so not into a log
        print(System.out, event.getWebServer().getPort());
    }

    void print(PrintStream out, int port) {
        out.println();
        out.println("  The demo college is open:  http://localhost:" + port + "/");
        out.println();
        out.println("  Everybody's password: " + accounts.password() + "    signing PIN: " + accounts.pin());
        out.println();
        accounts.accounts()
                .forEach(account -> out.println(String.format(
                        Locale.ROOT, "    %-10s %-28s %s", account.login(), account.printedName(), account.does())));
        out.println();
        out.println("  Nothing here is real, and nothing is kept: stop with Ctrl-C and start anew.");
        out.println();
    }
}
