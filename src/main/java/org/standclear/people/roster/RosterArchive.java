package org.standclear.people.roster;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;

/**
 * Unpacks the CSV files of an archive in memory. How many there are and how much they unpack to is limited while they are
 * unpacked, whatever the archive says about itself, so that a small file cannot fill the memory.
 */
final class RosterArchive {

    static final int MOST_ENTRIES = 40;
    static final int MOST_BYTES = 32 * 1024 * 1024;
    private static final int CHUNK = 8192;

    private int unpacked;

    private RosterArchive() {}

    /** Whether the file begins as zip archives do. */
    static boolean isOne(byte[] file) {
        return file.length > 3 && file[0] == 'P' && file[1] == 'K' && file[2] < 9 && file[3] < 9;
    }

    /** The CSV files by name, without folders; throws with one clear line when it cannot be used. */
    static Map<String, byte[]> files(byte[] archive) {
        return new RosterArchive().read(archive);
    }

    private Map<String, byte[]> read(byte[] archive) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(archive))) {
            int entries = 0;
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                if (++entries > MOST_ENTRIES) {
                    throw new RosterException(
                            "The archive holds more than " + MOST_ENTRIES + " files; nothing was read.");
                }
                byte[] content = content(zip);
                String name = name(entry);
                if (!entry.isDirectory() && name.endsWith(".csv") && files.put(name, content) != null) {
                    throw new RosterException("The archive holds two files named " + name + "; nothing was read.");
                }
            }
        } catch (IOException | IllegalArgumentException broken) {
            throw new RosterException("The archive cannot be unpacked: " + broken.getMessage());
        }
        if (files.isEmpty()) {
            throw new RosterException("The archive holds no CSV file that can be read.");
        }
        return files;
    }

    private byte[] content(ZipInputStream zip) throws IOException {
        ByteArrayOutputStream content = new ByteArrayOutputStream();
        byte[] chunk = new byte[CHUNK];
        for (int read = zip.read(chunk); read >= 0; read = zip.read(chunk)) {
            unpacked += read;
            if (unpacked > MOST_BYTES) {
                throw new RosterException("The archive unpacks to more than 32 MiB; nothing was read.");
            }
            content.write(chunk, 0, read);
        }
        return content.toByteArray();
    }

    private static String name(ZipEntry entry) {
        String name = entry.getName().replace('\\', '/');
        return name.substring(name.lastIndexOf('/') + 1).toLowerCase(Locale.ROOT);
    }
}
