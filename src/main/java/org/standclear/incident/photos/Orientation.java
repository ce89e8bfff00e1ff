package org.standclear.incident.photos;

import java.awt.geom.AffineTransform;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * Which way up a phone held its camera, by the one entry of the Exif block (JEITA CP-3451, tag 0x0112) that has to be read
 * before the block is thrown away. Whatever cannot be read counts as upright.
 */
enum Orientation {
    UPRIGHT,
    MIRRORED,
    UPSIDE_DOWN,
    FLIPPED,
    TRANSPOSED,
    TURNED_RIGHT,
    TRANSVERSED,
    TURNED_LEFT;

    private static final int TAG = 0x0112;
    private static final int SHORT = 3;
    private static final int MARKER = 0xFF;
    private static final int APP1 = 0xE1;
    private static final int START_OF_SCAN = 0xDA;
    private static final byte[] EXIF = "Exif\0\0".getBytes(StandardCharsets.ISO_8859_1);
    private static final int ENTRY_BYTES = 12;

    /** Reads it from a JPEG file. */
    static Orientation of(byte[] jpeg) {
        int at = 2;
        while (at + 4 <= jpeg.length && (jpeg[at] & 0xFF) == MARKER && (jpeg[at + 1] & 0xFF) != START_OF_SCAN) {
            int length = ((jpeg[at + 2] & 0xFF) << 8) | (jpeg[at + 3] & 0xFF);
            int end = at + 2 + length;
            if (length < 2 || end > jpeg.length) {
                return UPRIGHT;
            }
            if ((jpeg[at + 1] & 0xFF) == APP1 && isExif(jpeg, at + 4, end)) {
                return inBlock(ByteBuffer.wrap(jpeg, at + 4 + EXIF.length, end - at - 4 - EXIF.length)
                        .slice());
            }
            at = end;
        }
        return UPRIGHT;
    }

    private static boolean isExif(byte[] jpeg, int from, int end) {
        if (from + EXIF.length > end) {
            return false;
        }
        for (int i = 0; i < EXIF.length; i++) {
            if (jpeg[from + i] != EXIF[i]) {
                return false;
            }
        }
        return true;
    }

    private static Orientation inBlock(ByteBuffer block) {
        if (block.limit() < 8) {
            return UPRIGHT;
        }
        block.order(block.get(0) == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
        int directory = block.getInt(4);
        if (directory < 8 || directory > block.limit() - 2) {
            return UPRIGHT;
        }
        int entries = block.getShort(directory) & 0xFFFF;
        for (int i = 0; i < entries; i++) {
            int entry = directory + 2 + i * ENTRY_BYTES;
            if (entry > block.limit() - ENTRY_BYTES) {
                return UPRIGHT;
            }
            if ((block.getShort(entry) & 0xFFFF) == TAG && block.getShort(entry + 2) == SHORT) {
                int value = block.getShort(entry + 8);
                return value >= 1 && value <= values().length ? values()[value - 1] : UPRIGHT;
            }
        }
        return UPRIGHT;
    }

    /** Whether width and height change places. */
    boolean swapsSides() {
        return compareTo(TRANSPOSED) >= 0;
    }

    /** Turns a picture of this size, as stored, the way that it was seen. */
    AffineTransform upright(int width, int height) {
        return switch (this) {
            case UPRIGHT -> new AffineTransform();
            case MIRRORED -> new AffineTransform(-1, 0, 0, 1, width, 0);
            case UPSIDE_DOWN -> new AffineTransform(-1, 0, 0, -1, width, height);
            case FLIPPED -> new AffineTransform(1, 0, 0, -1, 0, height);
            case TRANSPOSED -> new AffineTransform(0, 1, 1, 0, 0, 0);
            case TURNED_RIGHT -> new AffineTransform(0, 1, -1, 0, height, 0);
            case TRANSVERSED -> new AffineTransform(0, -1, -1, 0, height, width);
            case TURNED_LEFT -> new AffineTransform(0, -1, 1, 0, 0, width);
        };
    }
}
