package org.standclear.incident.photos;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Iterator;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.ImageOutputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.springframework.core.io.ByteArrayResource;
import org.springframework.core.io.InputStreamSource;
import org.springframework.stereotype.Component;

/**
 * Makes a photo anew: reads the picture's size from its header, refuses what is too large before it is decoded, decodes
 * only as many pixels as are kept, and writes a JPEG that has nothing in it but the picture. It is slow and works on one
 * picture at a time: nobody comes here with a transaction open, or all connections end up waiting at its door.
 */
@Component
public class PhotoDarkroom {

    /** The longer side of what is kept. */
    static final int LONGEST_SIDE = 1600;

    /** As many as a phone's camera takes today; more could only be made to fill the memory. Common practice. */
    static final long MOST_PIXELS = 60_000_000;

    static final int LONGEST_SIDE_TAKEN = 20_000;
    static final int MOST_BYTES = 8 * 1024 * 1024;

    private static final float QUALITY = 0.85f;

    // one at a time: what one picture needs is known, what ten need would not fit
    private final Semaphore turn;

    // who comes after these is sent away at once, and no file of theirs is in memory
    private final Semaphore inside;
    private final long patienceSeconds;

    PhotoDarkroom() {
        this(4, 10);
    }

    PhotoDarkroom(int mayWait, long patienceSeconds) {
        this.turn = new Semaphore(1, true);
        this.inside = new Semaphore(1 + mayWait);
        this.patienceSeconds = patienceSeconds;
    }

    /** What came of a file. */
    public sealed interface Developed {

        /** The picture as a JPEG, the right way up. */
        final class Photo implements Developed {

            private final byte[] jpeg;
            private final int width;
            private final int height;

            Photo(byte[] jpeg, int width, int height) {
                this.jpeg = jpeg.clone();
                this.width = width;
                this.height = height;
            }

            /** The bytes of the file. */
            public byte[] jpeg() {
                return jpeg.clone();
            }

            /** In pixels. */
            public int width() {
                return width;
            }

            /** In pixels. */
            public int height() {
                return height;
            }
        }

        /** It is not taken; one line that says why. */
        record Refused(String says) implements Developed {}

        /** Too many others are waiting; the same file may be sent again in a moment. */
        record Busy(String says) implements Developed {}
    }

    /** Makes a picture of a file, or says why not; opens the file only when it is its turn. */
    public Developed develop(InputStreamSource file) {
        if (!inside.tryAcquire()) {
            return busy();
        }
        try {
            return inTurn(file);
        } finally {
            inside.release();
        }
    }

    Developed develop(byte[] file) {
        return develop(new ByteArrayResource(file));
    }

    private static Developed busy() {
        return new Developed.Busy("Other photos are being taken in just now. This one was not kept: choose it again and"
                + " send it in a minute.");
    }

    private Developed inTurn(InputStreamSource file) {
        if (!gotTurn()) {
            return busy();
        }
        try {
            return opened(file);
        } catch (IOException | RuntimeException broken) {
            // readers throw of both kinds at pictures that are cut off or made to break them
            return new Developed.Refused("The photo cannot be read: the file is damaged or incomplete.");
        } finally {
            turn.release();
        }
    }

    private boolean gotTurn() {
        try {
            return turn.tryAcquire(patienceSeconds, TimeUnit.SECONDS);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    private static Developed opened(InputStreamSource source) throws IOException {
        byte[] file;
        try (InputStream stream = source.getInputStream()) {
            file = stream.readNBytes(MOST_BYTES + 1);
        }
        if (file.length == 0) {
            return new Developed.Refused("Choose a photo first.");
        }
        if (file.length > MOST_BYTES) {
            return new Developed.Refused("The photo has more than 8 MiB; 8 MiB at most.");
        }
        Optional<PhotoFile> kind = PhotoFile.of(file);
        return kind.isPresent()
                ? read(file, kind.get())
                : new Developed.Refused("That is not a photo: a JPEG or PNG picture is taken, whatever its name says.");
    }

    private static Developed read(byte[] file, PhotoFile kind) throws IOException {
        Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName(kind.name());
        ImageReader reader = readers.next();
        try (ImageInputStream input = new MemoryCacheImageInputStream(new ByteArrayInputStream(file))) {
            // text and colour profiles beside the picture are skipped, packed ones are not even unpacked
            reader.setInput(input, true, true);
            long width = reader.getWidth(0);
            long height = reader.getHeight(0);
            if (width > LONGEST_SIDE_TAKEN || height > LONGEST_SIDE_TAKEN || width * height > MOST_PIXELS) {
                return new Developed.Refused("The photo says that it is " + width + " by " + height
                        + " pixels; 60 million at most are taken.");
            }
            BufferedImage picture = decode(reader, (int) Math.max(width, height));
            Orientation orientation = kind == PhotoFile.JPEG ? Orientation.of(file) : Orientation.UPRIGHT;
            return print(upright(picture, orientation));
        } finally {
            reader.dispose();
        }
    }

    private static BufferedImage decode(ImageReader reader, int longer) throws IOException {
        ImageReadParam take = reader.getDefaultReadParam();
        int every = Math.max(1, longer / LONGEST_SIDE);
        take.setSourceSubsampling(every, every, 0, 0);
        return reader.read(0, take);
    }

    /** Drawn on white, without transparency, the right way up and no larger than is kept. */
    private static BufferedImage upright(BufferedImage picture, Orientation orientation) {
        int width = picture.getWidth();
        int height = picture.getHeight();
        double scale = Math.min(1.0, LONGEST_SIDE / (double) Math.max(width, height));
        int seenWidth = orientation.swapsSides() ? height : width;
        int seenHeight = orientation.swapsSides() ? width : height;
        BufferedImage drawn = new BufferedImage(
                Math.max(1, (int) Math.round(seenWidth * scale)),
                Math.max(1, (int) Math.round(seenHeight * scale)),
                BufferedImage.TYPE_INT_RGB);
        Graphics2D paper = drawn.createGraphics();
        try {
            paper.setColor(Color.WHITE);
            paper.fillRect(0, 0, drawn.getWidth(), drawn.getHeight());
            paper.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
            AffineTransform way = AffineTransform.getScaleInstance(scale, scale);
            way.concatenate(orientation.upright(width, height));
            paper.drawRenderedImage(picture, way);
        } finally {
            paper.dispose();
        }
        return drawn;
    }

    private static Developed print(BufferedImage picture) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ImageOutputStream output = new MemoryCacheImageOutputStream(bytes)) {
            writer.setOutput(output);
            ImageWriteParam how = writer.getDefaultWriteParam();
            how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            how.setCompressionQuality(QUALITY);
            writer.write(null, new IIOImage(picture, null, null), how);
        } finally {
            writer.dispose();
        }
        return new Developed.Photo(bytes.toByteArray(), picture.getWidth(), picture.getHeight());
    }
}
