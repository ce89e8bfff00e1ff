package org.standclear.message;

import java.time.Clock;
import java.util.UUID;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.SmartLifecycle;
import org.springframework.mail.javamail.JavaMailSender;
import org.springframework.stereotype.Component;

/**
 * Sends e-mail every few seconds, on every instance, where a mail server is set up. In a thread of its own: a server that
 * takes a second for each of a hundred letters must not hold up lapses, offers and missed slots, which share the other.
 */
@Component
class MailRounds implements SmartLifecycle {

    private static final Logger LOG = LoggerFactory.getLogger(MailRounds.class);
    private static final int FIRST_SECONDS = 10;
    private static final int PAUSE_SECONDS = 5;

    private final @Nullable MailPost post;
    private @Nullable ScheduledExecutorService rounds;

    MailRounds(
            OutboxRows outbox, ObjectProvider<JavaMailSender> sender, MailSettings.Configured settings, Clock clock) {
        JavaMailSender server = sender.getIfAvailable();
        this.post = server == null || !settings.get().on()
                ? null
                : new MailPost(outbox, server, settings.get(), UUID.randomUUID().toString(), clock);
    }

    @Override
    public void start() {
        if (post == null) {
            return;
        }
        ScheduledExecutorService started = Executors.newSingleThreadScheduledExecutor(task -> {
            Thread thread = new Thread(task, "mail");
            thread.setDaemon(true);
            return thread;
        });
        started.scheduleWithFixedDelay(() -> send(post), FIRST_SECONDS, PAUSE_SECONDS, TimeUnit.SECONDS);
        rounds = started;
    }

    /** An exception would end the rounds for good. */
    private static void send(MailPost post) {
        try {
            post.round();
        } catch (RuntimeException failed) {
            LOG.warn("a round of e-mail failed, the next is in {} s", PAUSE_SECONDS, failed);
        }
    }

    /** A letter that is under way is given a moment, so that it need not leave twice. */
    @Override
    public void stop() {
        ScheduledExecutorService running = rounds;
        rounds = null;
        if (running == null) {
            return;
        }
        running.shutdown();
        try {
            if (!running.awaitTermination(PAUSE_SECONDS, TimeUnit.SECONDS)) {
                LOG.warn("the mail server did not take a letter in time; it leaves once more after the next start");
            }
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public boolean isRunning() {
        return rounds != null;
    }
}
