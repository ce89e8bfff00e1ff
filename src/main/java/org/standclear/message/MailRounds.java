package org.standclear.message;

import java.time.Clock;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.annotation.Configuration;
import org.springframework.mail.javamail.JavaMailSender;
import org.springframework.scheduling.annotation.EnableScheduling;
import org.springframework.scheduling.annotation.Scheduled;

/** Sends e-mail every few seconds, on every instance, where a mail server is set up. */
@Configuration(proxyBeanMethods = false)
@EnableScheduling
class MailRounds {

    private final @Nullable MailPost post;

    MailRounds(
            OutboxRows outbox, ObjectProvider<JavaMailSender> sender, MailSettings.Configured settings, Clock clock) {
        JavaMailSender server = sender.getIfAvailable();
        this.post = server == null || !settings.get().on()
                ? null
                : new MailPost(outbox, server, settings.get(), UUID.randomUUID().toString(), clock);
    }

    @Scheduled(initialDelayString = "PT10S", fixedDelayString = "PT5S")
    void send() {
        if (post != null) {
            post.round();
        }
    }
}
