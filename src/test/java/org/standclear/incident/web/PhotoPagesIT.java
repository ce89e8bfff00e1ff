package org.standclear.incident.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;

import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockMultipartFile;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentPhotos;
import org.standclear.incident.photos.MadeUpFiles;
import org.standclear.people.Person;
import org.standclear.platform.ids.IncidentId;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Photos over the wire: by what they are, under no name of theirs, and only for those who may see them. */
class PhotoPagesIT {

    abstract static class Cases extends IncidentPageCases {

        private MockHttpServletResponse sends(Person who, IncidentId id, String name, String type, byte[] file)
                throws Exception {
            return send(
                    who,
                    multipart(at(id) + "/photos")
                            .file(new MockMultipartFile("photo", name, type, file))
                            .param("caption", "The plate")
                            .param("formToken", UUID.randomUUID().toString()));
        }

        private IncidentPhotos photos() {
            return application.getBean(IncidentPhotos.class);
        }

        @Test
        void keepsAPhotoAndShowsIt() throws Exception {
            IncidentId id = reported(IncidentClass.NEAR_MISS);
            byte[] file = MadeUpFiles.withExif(MadeUpFiles.picture("jpeg", 90, 60), 6, "41.1579 N 8.6291 W");
            led(sends(scene().adaeze, id, "../../etc/standclear.jpg", "image/jpeg", file));

            IncidentPhotos.Photo photo = photos().of(id).get(0);
            MockHttpServletResponse shown = send(ines, get(at(id) + "/photos/" + photo.id()));
            assertThat(shown.getContentType()).isEqualTo("image/jpeg");
            assertThat(shown.getHeader("X-Content-Type-Options")).isEqualTo("nosniff");
            assertThat(new String(shown.getContentAsByteArray(), StandardCharsets.ISO_8859_1))
                    .doesNotContain("Exif", "41.1579");
            assertThat(java.util.List.of(photo.width(), photo.height())).containsExactly(60, 90);
            assertThat(jdbc.sql("select count(*) from incident_photos where caption like '%etc%'")
                            .query(Integer.class)
                            .single())
                    .as("the name of the file is kept nowhere")
                    .isZero();
            assertThat(see(ines, at(id)).select("figure img").attr("alt")).isEqualTo("The plate");
            assertThat(statusOf(scene().mateo, at(id) + "/photos/" + photo.id()))
                    .isEqualTo(404);
            IncidentId other = reported(IncidentClass.NEAR_MISS);
            assertThat(statusOf(ines, at(other) + "/photos/" + photo.id())).isEqualTo(404);
        }

        @Test
        void refusesWhatIsNoPhotoWithOneLine() throws Exception {
            IncidentId id = reported(IncidentClass.NEAR_MISS);
            byte[] script =
                    "<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'/>".getBytes(StandardCharsets.UTF_8);

            assertThat(refusal(sends(ines, id, "photo.jpg", "image/jpeg", script)))
                    .contains("That is not a photo");
            assertThat(refusal(sends(ines, id, "..\\..\\photo.png", "image/png", new byte[0])))
                    .contains("Choose a photo");
            assertThat(refusal(sends(ines, id, "big.png", "image/png", new byte[9_000_000])))
                    .contains("8 MiB at most");
            assertThat(send(
                                    ines,
                                    multipart(at(id) + "/photos")
                                            .param(
                                                    "formToken",
                                                    UUID.randomUUID().toString()))
                            .getStatus())
                    .isEqualTo(422);
            assertThat(photos().of(id)).isEmpty();
        }

        @Test
        void refusesBombsAndPathsAndKeepsNothingOfThem() throws Exception {
            IncidentId id = reported(IncidentClass.NEAR_MISS);
            byte[] bomb = MadeUpFiles.blackPng(10_000, 10_000);
            assertThat(bomb.length).as("tiny as a file").isLessThan(8_000_000);

            assertThat(refusal(sends(ines, id, "bomb.png", "image/png", bomb)))
                    .contains("10000 by 10000 pixels; 60 million at most");
            byte[] half = MadeUpFiles.picture("jpeg", 90, 60);
            assertThat(refusal(sends(
                            ines, id, "/etc/passwd", "image/jpeg", java.util.Arrays.copyOf(half, half.length / 3))))
                    .contains("damaged or incomplete");
            assertThat(photos().of(id)).isEmpty();
            led(sends(ines, id, "packed.png", "image/png", MadeUpFiles.pngWithPackedText()));
            assertThat(photos().of(id))
                    .as("what is packed beside the picture is not unpacked")
                    .hasSize(1);
            for (String name : new String[] {"../../x.jpg", "C:\\x.jpg", "a/b\u0000.jpg", "\"><script>.jpg"}) {
                led(sends(ines, id, name, "image/jpeg", MadeUpFiles.picture("jpeg", 12, 8)));
            }
            String page = see(ines, at(id)).html();
            assertThat(page).doesNotContain("x.jpg", "<script>.jpg");
        }

        @Test
        void takesTwelveAndNoMore() throws Exception {
            IncidentId id = reported(IncidentClass.NEAR_MISS);
            byte[] file = MadeUpFiles.picture("png", 12, 8);
            for (int i = 0; i < IncidentPhotos.MOST; i++) {
                led(sends(ines, id, "p.png", "image/png", file));
            }
            assertThat(refusal(sends(ines, id, "p.png", "image/png", file))).contains("no more are taken");
        }

        @Test
        void takesNoneOnceTheIncidentIsClosed() throws Exception {
            IncidentId id = reported(IncidentClass.NEAR_MISS);
            assertThat(see(ines, at(id)).select("input[type=file]")).hasSize(1);
            jdbc.sql("update incidents set state = 'CLOSED', closed_at = reported_at where id = :id")
                    .param("id", id.value())
                    .update();

            assertThat(refusal(sends(ines, id, "p.png", "image/png", MadeUpFiles.picture("png", 12, 8))))
                    .contains("closed");
            assertThat(photos().of(id)).isEmpty();
            assertThat(see(ines, at(id)).select("input[type=file]")).isEmpty();
        }

        @Test
        void showsAReporterTheirOwnPhotosOnly() throws Exception {
            IncidentId id = kept(send(
                            IncidentClass.NEAR_MISS,
                            new org.standclear.incident.IncidentReports.Teller.Named(
                                    scene().noor.id(), org.standclear.incident.ReporterPart.SAW_IT)))
                    .incident();
            byte[] file = MadeUpFiles.picture("jpeg", 12, 8);
            led(sends(scene().noor, id, "mine.jpg", "image/jpeg", file));
            led(sends(ines, id, "theirs.jpg", "image/jpeg", file));

            assertThat(see(scene().noor, at(id)).select("figure img")).hasSize(1);
            assertThat(see(ines, at(id)).select("figure img")).hasSize(2);
            UUID theirs = photos().of(id).get(1).id();
            assertThat(statusOf(scene().noor, at(id) + "/photos/" + theirs)).isEqualTo(404);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
