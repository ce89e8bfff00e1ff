package org.standclear.people.roster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;

/**
 * Sets of OneRoster files, and archives of them. Column names: OneRoster CSV tables 1.1 and 1.2 of 1EdTech, from memory of
 * the published tables.
 */
class RosterSetTests {

    private static final String USERS = """
            sourcedId,status,dateLastModified,enabledUser,orgSourcedIds,role,username,userIds,givenName,familyName,email
            u1,,,true,o1,student,noor,,Noor,Candlewick,n@x.example
            u2,,,true,o1,student,Mateo,,Mateo,Ironbark,
            u3,,,true,o1,teacher,ines,,Ines,Quarryvale,
            u4,tobedeleted,,false,o1,student,kofi,,Kofi,Marblewood,
            """;
    private static final String CLASSES = """
            sourcedId,status,dateLastModified,title,courseSourcedId,classCode,classType
            c1,,,Robots one,k1,RBT 110-01,scheduled
            c2,,,Robots two,k1,02,scheduled
            """;
    private static final String COURSES = """
            sourcedId,status,title,courseCode
            k1,,Robot Programming I,RBT 110
            """;
    private static final String ENROLLMENTS = """
            sourcedId,status,dateLastModified,classSourcedId,schoolSourcedId,userSourcedId,role,primary
            e1,,,c1,o1,u1,student,
            e2,,,c2,o1,u2,student,
            e3,,,c1,o1,u3,teacher,true
            e4,,,c1,o1,u4,student,
            e5,tobedeleted,,c1,o1,u2,student,
            """;

    private static Map<String, byte[]> set(String users, String classes, String courses, String enrollments) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("users.csv", users.getBytes(StandardCharsets.UTF_8));
        files.put("classes.csv", classes.getBytes(StandardCharsets.UTF_8));
        files.put("courses.csv", courses.getBytes(StandardCharsets.UTF_8));
        files.put("enrollments.csv", enrollments.getBytes(StandardCharsets.UTF_8));
        return files;
    }

    private static byte[] zip(Map<String, byte[]> files) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (Map.Entry<String, byte[]> file : files.entrySet()) {
                zip.putNextEntry(new ZipEntry(file.getKey()));
                zip.write(file.getValue());
                zip.closeEntry();
            }
        }
        return bytes.toByteArray();
    }

    @Test
    void joinsTheFilesToOneRosterOfStudents() {
        RosterSet set = RosterSet.of(set(USERS, CLASSES, COURSES, ENROLLMENTS));

        assertThat(set.problems()).isEmpty();
        assertThat(set.rows())
                .containsExactly(
                        new RosterRow(2, "noor", "Noor Candlewick", "n@x.example", "RBT 110", "01", ""),
                        new RosterRow(3, "mateo", "Mateo Ironbark", "", "RBT 110", "02", ""));
    }

    @Test
    void keepsOnlyTheColumnsThatARosterNeedsAndRefusesVeryWideTables() {
        byte[] users = USERS.getBytes(StandardCharsets.UTF_8);
        assertThat(CsvTable.of("users.csv", users, java.util.List.of("sourcedId", "username"), "email")
                        .lines()
                        .get(0)
                        .cells()
                        .keySet())
                .containsExactlyInAnyOrder("sourcedid", "username", "email", "status");

        String wide = "sourcedId,username,givenName,familyName" + ",x".repeat(57);
        for (int i = 1; wide.contains(",x,") || wide.endsWith(",x"); i++) {
            wide = wide.replaceFirst(",x(?=,|$)", ",c" + i);
        }
        assertThat(RosterSet.of(set(wide + "\n", CLASSES, COURSES, ENROLLMENTS)).problems())
                .containsExactly(
                        "users.csv has 61 columns; a roster has 60 at most. " + "Leave out those that are not needed.");
        assertThat(RosterFile.of(wide + "\n").problems())
                .containsExactly(
                        "The file has 61 columns; a roster has 60 at most. " + "Leave out those that are not needed.");
    }

    @Test
    void saysWhichLineOfWhichFileIsWrong() {
        assertThat(RosterSet.of(set(USERS, CLASSES, COURSES, ENROLLMENTS + "e6,,,c9,o1,u1,student,\n"))
                        .problems())
                .containsExactly("enrollments.csv, line 7: there is no \"c9\" in classes.csv.");
        assertThat(RosterSet.of(set(USERS, CLASSES, COURSES, ENROLLMENTS + "e6,,,c1,o1,u9,student,\n"))
                        .problems())
                .containsExactly("enrollments.csv, line 7: there is no \"u9\" in users.csv.");
        assertThat(RosterSet.of(set(USERS, CLASSES.replace("k1", "k7"), COURSES, ENROLLMENTS))
                        .problems())
                .contains("classes.csv, line 2: there is no course \"k7\" in courses.csv.");
        assertThat(RosterSet.of(set(
                                USERS + "u1,,,true,o1,student,yuki,,Yuki,Halfmoon,\n", CLASSES, COURSES, ENROLLMENTS))
                        .problems())
                .containsExactly("users.csv, lines 2 and 6: the sourcedId \"u1\" is there twice.");
        assertThat(RosterSet.of(set(USERS.replace("Noor,", "=cmd|,"), CLASSES, COURSES, ENROLLMENTS))
                        .problems())
                .singleElement()
                .asString()
                .startsWith("enrollments.csv: Line 2: a cell begins like a formula");
        assertThat(RosterSet.of(set(USERS.replace("username", "user"), CLASSES, COURSES, ENROLLMENTS))
                        .problems())
                .containsExactly("users.csv has no column username.");
        Map<String, byte[]> part = set(USERS, CLASSES, COURSES, ENROLLMENTS);
        part.remove("courses.csv");
        assertThat(RosterSet.of(part).problems()).containsExactly("The set lacks courses.csv.");
        Map<String, byte[]> wrong = set(USERS, CLASSES, COURSES, ENROLLMENTS);
        wrong.put("users.csv", USERS.replace("Noor", "N\u00f6or").getBytes(StandardCharsets.ISO_8859_1));
        assertThat(RosterSet.of(wrong).problems())
                .singleElement()
                .asString()
                .startsWith("users.csv: Line 2 is not UTF-8");
    }

    @Test
    void unpacksAnArchiveWhateverItsFoldersAreCalled() throws IOException {
        Map<String, byte[]> files = new LinkedHashMap<>();
        set(USERS, CLASSES, COURSES, ENROLLMENTS)
                .forEach((name, content) -> files.put("../../export/" + name, content));
        files.put("readme.txt", new byte[] {1});
        byte[] archive = zip(files);

        assertThat(RosterArchive.isOne(archive)).isTrue();
        assertThat(RosterArchive.isOne(USERS.getBytes(StandardCharsets.UTF_8))).isFalse();
        Map<String, byte[]> unpacked = RosterArchive.files(archive);
        assertThat(unpacked.keySet()).containsExactly("users.csv", "classes.csv", "courses.csv", "enrollments.csv");
        assertThat(RosterSet.of(unpacked).rows()).hasSize(2);
    }

    @Test
    void refusesArchivesThatWouldFillTheMemory() throws IOException {
        byte[] bomb = zip(Map.of("users.csv", new byte[RosterArchive.MOST_BYTES + 1]));
        assertThat(bomb).as("a small file").hasSizeLessThan(100_000);
        assertThatThrownBy(() -> RosterArchive.files(bomb))
                .isInstanceOf(RosterException.class)
                .hasMessageContaining("more than 32 MiB");
        // what is not wanted is unpacked too, to get past it, and counts
        byte[] beside = zip(Map.of("picture.png", new byte[RosterArchive.MOST_BYTES + 1]));
        assertThatThrownBy(() -> RosterArchive.files(beside)).hasMessageContaining("more than 32 MiB");
        byte[] most = zip(Map.of("users.csv", new byte[RosterArchive.MOST_BYTES]));
        assertThat(RosterArchive.files(most)).hasSize(1);
        Map<String, byte[]> many = new LinkedHashMap<>();
        for (int number = 0; number <= RosterArchive.MOST_ENTRIES; number++) {
            many.put("file" + number + ".csv", new byte[1]);
        }
        byte[] crowded = zip(many);
        assertThatThrownBy(() -> RosterArchive.files(crowded)).hasMessageContaining("more than 40 files");
        many.remove("file0.csv");
        assertThat(RosterArchive.files(zip(many))).hasSize(RosterArchive.MOST_ENTRIES);
    }

    @Test
    void refusesArchivesThatCannotBeUsed() throws IOException {
        byte[] whole = zip(set(USERS, CLASSES, COURSES, ENROLLMENTS));
        byte[] torn = Arrays.copyOf(whole, 60);
        assertThatThrownBy(() -> RosterArchive.files(torn))
                .isInstanceOf(RosterException.class)
                .hasMessageContaining("cannot be unpacked");
        byte[] twice = zip(Map.of("a/users.csv", new byte[1], "b/users.csv", new byte[1]));
        assertThatThrownBy(() -> RosterArchive.files(twice)).hasMessageContaining("two files named users.csv");
        byte[] nothing = zip(Map.of("readme.txt", new byte[1]));
        assertThatThrownBy(() -> RosterArchive.files(nothing)).hasMessageContaining("no CSV file");
    }
}
