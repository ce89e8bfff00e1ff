package org.standclear.message;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.StandclearApplication;
import org.standclear.message.Messages.Wishes;
import org.standclear.platform.ids.PersonId;

/** A mail server that answers nothing holds nobody up but the mail: what happens by itself every few seconds goes on. */
class SlowMailIT {

    /** Something else that happens by itself. */
    static class Ticking {

        private final AtomicInteger ticks = new AtomicInteger();

        @Scheduled(fixedDelay = 100)
        void tick() {
            ticks.incrementAndGet();
        }
    }

    /** Takes calls and says nothing. */
    private static final class SilentServer implements AutoCloseable {

        private final ServerSocket socket;
        private final List<Socket> callers = new ArrayList<>();
        private final CountDownLatch called = new CountDownLatch(1);

        SilentServer() throws IOException {
            socket = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
            Thread serving = new Thread(this::serve, "silent-smtp");
            serving.setDaemon(true);
            serving.start();
        }

        private void serve() {
            try {
                while (!socket.isClosed()) {
                    callers.add(socket.accept());
                    called.countDown();
                }
            } catch (IOException closed) {
                called.countDown();
            }
        }

        @Override
        public void close() throws IOException {
            socket.close();
            for (Socket caller : callers) {
                caller.close();
            }
        }
    }

    @Test
    void othersGoOnWhileALetterWaitsForTheServer() throws Exception {
        try (SilentServer server = new SilentServer();
                ConfigurableApplicationContext application = new SpringApplicationBuilder(
                                StandclearApplication.class, Ticking.class)
                        .run(
                                "--server.port=0",
                                "--spring.datasource.url=jdbc:h2:mem:slow-mail",
                                "--spring.mail.host=127.0.0.1",
                                "--spring.mail.port=" + server.socket.getLocalPort(),
                                "--standclear.mail.from=bench@college.example")) {
            Messages messages = application.getBean(Messages.class);
            PersonId noor = PersonId.next();
            new TransactionTemplate(application.getBean(PlatformTransactionManager.class))
                    .executeWithoutResult(status -> {
                        messages.wish(
                                noor,
                                new Wishes(
                                        "noor@college.example",
                                        true,
                                        java.time.LocalTime.NOON,
                                        java.time.LocalTime.NOON));
                        messages.tell(Message.of(noor, "test", "Hello", List.of("Text."), "/me"));
                    });
            assertThat(server.called.await(30, TimeUnit.SECONDS))
                    .as("the letter is under way")
                    .isTrue();

            AtomicInteger ticks = application.getBean(Ticking.class).ticks;
            int before = ticks.get();
            Thread.sleep(3000);

            assertThat(ticks.get() - before).isGreaterThan(10);
            assertThat(messages.of(noor, 1).get(0).mail()).isEqualTo("e-mail waits to be sent");
        }
    }
}
