package org.standclear.incident.photos;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import java.util.zip.DeflaterOutputStream;
import javax.imageio.ImageIO;

/** Pictures, and files made to break whoever reads them. */
public final class MadeUpFiles {

    private static final int CHUNK = 1 << 16;

    private MadeUpFiles() {}

    /** A picture whose left half is red and whose right half is blue. */
    public static byte[] picture(String format, int width, int height) {
        BufferedImage picture = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D brush = picture.createGraphics();
        brush.setColor(Color.RED);
        brush.fillRect(0, 0, width / 2, height);
        brush.setColor(Color.BLUE);
        brush.fillRect(width / 2, 0, width - width / 2, height);
        brush.dispose();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            ImageIO.write(picture, format, bytes);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return bytes.toByteArray();
    }

    /** A JPEG with an Exif block (JEITA CP-3451): which way up, and a remark such as a place. */
    public static byte[] withExif(byte[] jpeg, int orientation, String remark) {
        byte[] words = (remark + "\0").getBytes(StandardCharsets.US_ASCII);
        ByteBuffer block = ByteBuffer.allocate(6 + 8 + 2 + 2 * 12 + 4 + words.length);
        block.put("Exif\0\0MM\0*".getBytes(StandardCharsets.ISO_8859_1)).putInt(8);
        block.putShort((short) 2);
        block.putShort((short) 0x010E).putShort((short) 2).putInt(words.length).putInt(8 + 2 + 2 * 12 + 4);
        block.putShort((short) 0x0112)
                .putShort((short) 3)
                .putInt(1)
                .putShort((short) orientation)
                .putShort((short) 0);
        block.putInt(0).put(words);
        ByteBuffer file = ByteBuffer.allocate(jpeg.length + 4 + block.capacity());
        file.put(jpeg, 0, 2).put((byte) 0xFF).put((byte) 0xE1).putShort((short) (block.capacity() + 2));
        return file.put(block.array()).put(jpeg, 2, jpeg.length - 2).array();
    }

    /** A PNG of that size in which every pixel is black: large when decoded, tiny as a file. */
    public static byte[] blackPng(int width, int height) throws IOException {
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        file.write(new byte[] {(byte) 0x89, 'P', 'N', 'G', 0x0D, 0x0A, 0x1A, 0x0A});
        ByteBuffer header = ByteBuffer.allocate(13);
        header.putInt(width).putInt(height).put((byte) 8).put((byte) 2);
        chunk(file, "IHDR", header.array());
        chunk(file, "IDAT", zeros((1L + 3L * width) * height));
        chunk(file, "IEND", new byte[0]);
        return file.toByteArray();
    }

    /** A small PNG with a packed text of 200 MB beside the picture. */
    public static byte[] pngWithPackedText() throws IOException {
        byte[] plain = blackPng(8, 8);
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        file.write(plain, 0, 8 + 25);
        ByteArrayOutputStream text = new ByteArrayOutputStream();
        text.write("Comment\0\0".getBytes(StandardCharsets.ISO_8859_1));
        text.write(zeros(200_000_000));
        chunk(file, "zTXt", text.toByteArray());
        file.write(plain, 8 + 25, plain.length - 8 - 25);
        return file.toByteArray();
    }

    private static byte[] zeros(long count) throws IOException {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (DeflaterOutputStream packing = new DeflaterOutputStream(packed)) {
            for (long left = count; left > 0; left -= CHUNK) {
                packing.write(new byte[(int) Math.min(CHUNK, left)]);
            }
        }
        return packed.toByteArray();
    }

    private static void chunk(ByteArrayOutputStream file, String type, byte[] data) throws IOException {
        byte[] named = new byte[4 + data.length];
        System.arraycopy(type.getBytes(StandardCharsets.US_ASCII), 0, named, 0, 4);
        System.arraycopy(data, 0, named, 4, data.length);
        CRC32 sum = new CRC32();
        sum.update(named);
        file.write(ByteBuffer.allocate(4).putInt(data.length).array());
        file.write(named);
        file.write(ByteBuffer.allocate(4).putInt((int) sum.getValue()).array());
    }
}
