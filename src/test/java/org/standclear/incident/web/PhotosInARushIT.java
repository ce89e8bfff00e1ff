package org.standclear.incident.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;

import java.io.ByteArrayInputStream;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockMultipartFile;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentPhotos;
import org.standclear.incident.photos.MadeUpFiles;
import org.standclear.incident.photos.PhotoDarkroom;
import org.standclear.platform.ids.IncidentId;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** More photos at once than there are connections: they wait or go away, and nobody else waits with them. */
class PhotosInARushIT {

    /** The pool has 20. */
    private static final int POSTS = 25;

    abstract static class Cases extends IncidentPageCases {

        @Test
        void aStopDoesNotWaitForPhotos() throws Exception {
            running();
            IncidentId id = reported(IncidentClass.NEAR_MISS);
            ExecutorService others = Executors.newFixedThreadPool(POSTS + 1);
            CountDownLatch held = new CountDownLatch(1);
            CountDownLatch release = new CountDownLatch(1);
            try {
                others.submit(() -> holdTheDarkroom(held, release));
                assertThat(held.await(30, TimeUnit.SECONDS)).isTrue();
                List<Future<MockHttpServletResponse>> posts = new ArrayList<>();
                for (int i = 0; i < POSTS; i++) {
                    posts.add(others.submit(() -> photo(id)));
                }
                // those that found no room have answered; without room for them all, the others hold a connection each
                TimeUnit.SECONDS.sleep(3);

                MockHttpServletResponse stopped = assertTimeoutPreemptively(
                        Duration.ofSeconds(6),
                        () -> submit(scene().noor, "/bench/" + scene().cell + "/stop", Map.of()));

                assertThat(stopped.getStatus()).isEqualTo(302);
                assertThat(application
                                .getBean(Bookings.class)
                                .find(scene().booking)
                                .orElseThrow()
                                .state())
                        .isEqualTo(BookingState.STOPPED);
                release.countDown();
                assertAnswered(id, posts);
            } finally {
                release.countDown();
                others.shutdownNow();
            }
        }

        private Object holdTheDarkroom(CountDownLatch held, CountDownLatch release) {
            return application.getBean(PhotoDarkroom.class).develop(() -> {
                held.countDown();
                try {
                    release.await(60, TimeUnit.SECONDS);
                } catch (InterruptedException stopped) {
                    Thread.currentThread().interrupt();
                }
                return new ByteArrayInputStream(new byte[0]);
            });
        }

        private MockHttpServletResponse photo(IncidentId id) throws Exception {
            return send(
                    ines,
                    multipart(at(id) + "/photos")
                            .file(new MockMultipartFile(
                                    "photo", "p.png", "image/png", MadeUpFiles.picture("png", 12, 8)))
                            .param("caption", "The plate")
                            .param("formToken", UUID.randomUUID().toString()));
        }

        private void assertAnswered(IncidentId id, List<Future<MockHttpServletResponse>> posts) throws Exception {
            int taken = 0;
            int sentAway = 0;
            for (Future<MockHttpServletResponse> post : posts) {
                MockHttpServletResponse answer = post.get(60, TimeUnit.SECONDS);
                if (answer.getStatus() == 302) {
                    taken++;
                } else {
                    sentAway++;
                    assertThat(answer.getStatus()).isEqualTo(503);
                    assertThat(answer.getHeader("Retry-After")).isEqualTo("30");
                    assertThat(page(answer).select(".errors").text()).contains("Other photos are being taken in");
                }
            }
            assertThat(sentAway).as("more than may wait").isGreaterThanOrEqualTo(POSTS - 4);
            assertThat(application.getBean(IncidentPhotos.class).of(id)).hasSize(taken);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
