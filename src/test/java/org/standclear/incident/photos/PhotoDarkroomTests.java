package org.standclear.incident.photos;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.incident.photos.PhotoDarkroom.Developed;

/** A photo is taken by what it is, and comes out as a picture and nothing else. */
class PhotoDarkroomTests {

    private final PhotoDarkroom darkroom = new PhotoDarkroom();

    private Developed.Photo taken(byte[] file) {
        Developed developed = darkroom.develop(file);
        assertThat(developed).isInstanceOf(Developed.Photo.class);
        return (Developed.Photo) developed;
    }

    @Test
    void sendsAwayWhoFindsAFullDoorwayWithoutOpeningTheirFile() {
        PhotoDarkroom small = new PhotoDarkroom(0, 30);
        byte[] file = MadeUpFiles.picture("jpeg", 12, 8);
        List<Developed> within = new ArrayList<>();

        Developed outer = small.develop(() -> {
            within.add(small.develop(() -> {
                throw new IOException("opened");
            }));
            return new ByteArrayInputStream(file);
        });

        assertThat(outer).isInstanceOf(Developed.Photo.class);
        assertThat(within).hasSize(1).allMatch(Developed.Busy.class::isInstance);
        assertThat(small.develop(file)).as("the turn was given back").isInstanceOf(Developed.Photo.class);
    }

    @Test
    void waitsForATurnNoLongerThanItsPatience() {
        PhotoDarkroom impatient = new PhotoDarkroom(1, 0);
        List<Developed> within = new ArrayList<>();

        impatient.develop(() -> {
            within.add(impatient.develop(MadeUpFiles.picture("jpeg", 12, 8)));
            throw new IOException("no file");
        });

        assertThat(within).hasSize(1).allMatch(Developed.Busy.class::isInstance);
    }

    private String refused(byte[] file) {
        Developed developed = darkroom.develop(file);
        assertThat(developed).isInstanceOf(Developed.Refused.class);
        String says = ((Developed.Refused) developed).says();
        assertThat(says).as("one clear line").doesNotContain("\n", "Exception", "java.");
        return says;
    }

    private static BufferedImage seen(Developed.Photo photo) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(photo.jpeg()));
    }

    /** The markers of a JPEG file up to its scan (ISO/IEC 10918-1 B.1.1.3). */
    private static List<Integer> markers(byte[] jpeg) {
        List<Integer> markers = new ArrayList<>();
        int at = 2;
        while ((jpeg[at + 1] & 0xFF) != 0xDA) {
            markers.add(jpeg[at + 1] & 0xFF);
            at += 2 + ((jpeg[at + 2] & 0xFF) << 8) + (jpeg[at + 3] & 0xFF);
        }
        return markers;
    }

    @Test
    void takesWhatTheFileSaysBesideThePictureOut() {
        byte[] file =
                MadeUpFiles.withExif(MadeUpFiles.picture("jpeg", 80, 40), 1, "41.1579 N 8.6291 W by N. Candlewick");
        assertThat(markers(file)).as("the file itself has it").contains(0xE1);

        byte[] jpeg = taken(file).jpeg();

        assertThat(markers(jpeg))
                .as("Exif, XMP and profiles stand in E1 to EF, remarks in FE")
                .allSatisfy(marker -> assertThat(marker)
                        .isNotEqualTo(0xFE)
                        .satisfiesAnyOf(
                                one -> assertThat(one).isEqualTo(0xE0),
                                one -> assertThat(one).isLessThan(0xE0)));
        assertThat(new String(jpeg, StandardCharsets.ISO_8859_1)).doesNotContain("Exif", "Candlewick", "41.1579");
    }

    @ParameterizedTest
    @CsvSource({"1, 80, 40, R, B", "2, 80, 40, B, R", "3, 80, 40, B, R", "4, 80, 40, R, B"})
    void turnsItAsTheCameraWasHeld(int orientation, int width, int height, String left, String right)
            throws IOException {
        Developed.Photo photo = taken(MadeUpFiles.withExif(MadeUpFiles.picture("jpeg", 80, 40), orientation, ""));

        assertThat(List.of(photo.width(), photo.height())).containsExactly(width, height);
        assertThat(colour(seen(photo), 10, 20)).isEqualTo(left);
        assertThat(colour(seen(photo), 70, 20)).isEqualTo(right);
    }

    /** JEITA CP-3451, tag 0x0112: 6 has row 0 at the right, so the stored left side is seen at the top; 8 the reverse. */
    @ParameterizedTest
    @CsvSource({"5, R, B", "6, R, B", "7, B, R", "8, B, R"})
    void turnsAPhotoThatStandsOnItsSide(int orientation, String top, String bottom) throws IOException {
        Developed.Photo photo = taken(MadeUpFiles.withExif(MadeUpFiles.picture("jpeg", 80, 40), orientation, ""));

        assertThat(List.of(photo.width(), photo.height())).containsExactly(40, 80);
        assertThat(colour(seen(photo), 20, 10)).isEqualTo(top);
        assertThat(colour(seen(photo), 20, 70)).isEqualTo(bottom);
    }

    private static String colour(BufferedImage picture, int x, int y) {
        Color colour = new Color(picture.getRGB(x, y));
        return colour.getRed() > colour.getBlue() ? "R" : "B";
    }

    @ParameterizedTest
    @ValueSource(strings = {"jpeg", "png"})
    void keepsNoMoreThanSixteenHundredPixels(String format) {
        Developed.Photo photo = taken(MadeUpFiles.picture(format, 3300, 1000));

        assertThat(photo.width()).isBetween(1500, 1600);
        assertThat(photo.height()).isBetween(454, 486);
    }

    @Test
    void refusesWhatIsNoPhotoWhateverItIsCalled() {
        assertThat(refused("GIF89a and then some".getBytes(StandardCharsets.US_ASCII)))
                .contains("not a photo");
        assertThat(refused("<svg onload='alert(1)'/>".getBytes(StandardCharsets.US_ASCII)))
                .contains("not a photo");
        assertThat(refused("MZ a program".getBytes(StandardCharsets.US_ASCII))).contains("not a photo");
        assertThat(refused(new byte[0])).contains("Choose a photo");
        assertThat(refused(new byte[] {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF})).contains("damaged or incomplete");
    }

    /** 65,535 by 65,535 pixels of three bytes would be 12 GB, 40,000 by 40,000 4.8 GB; both are files of some bytes. */
    @Test
    void refusesByTheHeaderWhatWouldFillTheMemory() throws IOException {
        long before = System.nanoTime();
        byte[] bomb = Arrays.copyOf(MadeUpFiles.blackPng(16, 16), 2000);
        bomb[16] = bomb[20] = 0;
        bomb[17] = bomb[21] = 0;
        bomb[18] = bomb[22] = (byte) 0x9C;
        bomb[19] = bomb[23] = 0x40;

        assertThat(refused(bomb))
                .isEqualTo("The photo says that it is 40000 by 40000 pixels; 60 million at most are taken.");
        assertThat(System.nanoTime() - before).as("without decoding").isLessThan(5_000_000_000L);
    }

    /** 7,000 by 7,000 black pixels are 147 MB decoded and 143 KB as a file: allowed, and never held whole. */
    @Test
    void decodesALargeOneWithoutHoldingItWhole() throws IOException {
        byte[] file = MadeUpFiles.blackPng(7000, 7000);
        assertThat(file.length).isLessThan(300_000);

        Developed.Photo photo = taken(file);

        assertThat(photo.width()).isBetween(1500, 1600);
    }

    @Test
    void doesNotUnpackTextBesideThePicture() throws IOException {
        byte[] file = MadeUpFiles.pngWithPackedText();
        assertThat(file.length).isLessThan(300_000);
        long before = used();

        assertThat(taken(file).width()).isEqualTo(8);

        assertThat(used() - before).as("bytes kept for 200 MB of text").isLessThan(100_000_000L);
    }

    private static long used() {
        System.gc();
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }

    @Test
    void neverThrowsWhateverIsCutOffOrTurnedOver() {
        Random random = new Random(20260311);
        for (String format : List.of("jpeg", "png")) {
            byte[] whole = MadeUpFiles.withExif(MadeUpFiles.picture("jpeg", 60, 40), 6, "remark");
            byte[] good = format.equals("png") ? MadeUpFiles.picture("png", 60, 40) : whole;
            for (int i = 0; i < 300; i++) {
                byte[] broken = Arrays.copyOf(good, 4 + random.nextInt(good.length));
                broken[3 + random.nextInt(broken.length - 3)] = (byte) random.nextInt();
                Developed developed = darkroom.develop(broken);
                assertThat(developed).as("%s, try %d", format, i).isNotNull();
            }
        }
    }
}
