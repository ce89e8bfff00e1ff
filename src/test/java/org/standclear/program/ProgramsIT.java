package org.standclear.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.people.PeopleRegister;
import org.standclear.people.Person;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.ProgramId;
import org.standclear.platform.security.Role;
import org.standclear.program.ProgramUploads.Outcome;
import org.standclear.program.ProgramUploads.Refused;
import org.standclear.program.ProgramUploads.UploadProgram;
import org.standclear.program.ProgramUploads.Uploaded;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.Accounts;

/** Programs are kept byte for byte, never changed, and seen by their author and the staff only. */
class ProgramsIT {

    abstract static class Cases {

        @Autowired
        ProgramUploads uploads;

        @Autowired
        Programs programs;

        @Autowired
        PeopleRegister people;

        @Autowired
        MovableClock clock;

        @Autowired
        JdbcClient jdbc;

        private Person author = new Person(PersonId.next(), "", "", Set.of(), true);

        @BeforeEach
        void anAuthor() {
            author = Accounts.add(people, "Noor Candlewick", Role.STUDENT);
        }

        @Test
        void keepsTheBytesAsTheyCame() {
            byte[] bytes =
                    SampleProgram.sheet("Peg & plate <b>").replace("\n", "\r\n").getBytes(StandardCharsets.UTF_8);

            Revision revision = uploaded(null, bytes, null).revision();

            assertThat(programs.bytes(revision.id())).isEqualTo(bytes);
            assertThat(revision.sha256()).isEqualTo(Sha256.of(bytes));
            assertThat(revision.title()).isEqualTo("Peg & plate <b>");
            assertThat(revision.number()).isEqualTo(1);
            assertThat(programs.find(revision.id())).contains(revision);
        }

        @Test
        void aChangedByteOrDeclarationMakesTheNextRevision() {
            byte[] bytes = SampleProgram.bytes();
            Revision first = uploaded(null, bytes, null).revision();

            assertThat(uploaded(first.program(), bytes, null)).isEqualTo(new Uploaded(first, true));

            Revision second = uploaded(first.program(), bytes, "power: reduced\n# why\noverride-percent: 50.0\n")
                    .revision();
            assertThat(second.number()).isEqualTo(2);
            assertThat(second.sha256()).isEqualTo(first.sha256());
            assertThat(second.declaration()).isEqualTo("power: reduced\noverride-percent: 50\n");
            assertThat(uploaded(first.program(), bytes, "override-percent: 50\npower: reduced\n")
                            .unchanged())
                    .isTrue();

            Revision third = uploaded(first.program(), SampleProgram.bytes("Peg and plates"), null)
                    .revision();
            assertThat(third.number()).isEqualTo(3);
            assertThat(programs.bytes(second.id())).isEqualTo(bytes);
            assertThat(programs.revisions(first.program()))
                    .extracting(Revision::number)
                    .containsExactly(3, 2, 1);
            assertThat(programs.latestOf(author.id())).containsExactly(third);
        }

        @Test
        void namesOfFilesAreMendedNotRefused() {
            String name = "\u202e" + "\ud83e\udd16".repeat(2500) + ".yaml";
            byte[] untitled =
                    SampleProgram.sheet("Peg").replaceFirst("title: .*\n", "").getBytes(StandardCharsets.UTF_8);
            Revision kept = ((Uploaded)
                            uploads.upload(new UploadProgram(author.id(), null, null, name, untitled, null)))
                    .revision();

            assertThat(kept.fileName()).isEqualTo("\ud83e\udd16".repeat(99) + "\u2026");
            assertThat(kept.title()).isEqualTo("\ud83e\udd16".repeat(59) + "\u2026");
            assertThat(programs.find(kept.id())).contains(kept);
        }

        @Test
        void refusesBadInputAndKeepsNothing() {
            String good = SampleProgram.sheet("Peg");
            byte[] wrongEncoding = good.replace("Peg", "Pegé").getBytes(StandardCharsets.ISO_8859_1);

            assertThat(refused(null, wrongEncoding, null).says())
                    .startsWith("Line 2: ")
                    .contains("UTF-8");
            assertThat(refused(null, good.replace("Peg", "Pe\u0000g").getBytes(StandardCharsets.UTF_8), null)
                            .says())
                    .startsWith("Line 2: ");
            assertThat(refused(null, new byte[0], null).says()).contains("empty");
            assertThat(refused(null, new byte[ProgramUploads.MAX_BYTES + 1], null)
                            .says())
                    .contains("8 MiB");
            assertThat(refused(null, bytes("motion-sheet: 1\nsteps: [\n"), null).field())
                    .isEqualTo("file");
            assertThat(refused(null, bytes("motion-sheet: 1\nmotion-sheet: 1\n"), null)
                            .says())
                    .containsIgnoringCase("line 2");
            assertThat(refused(null, SampleProgram.bytes(), "power: sideways\n").field())
                    .isEqualTo("declaration");
            assertThat(refused(null, SampleProgram.bytes(), "start: nowhere\n").says())
                    .contains("nowhere");
            assertThat(programs.latestOf(author.id())).isEmpty();
        }

        @Test
        void takesAFileOfTheLargestSize() {
            String sheet = SampleProgram.sheet("Large");
            String comment = "# " + "x".repeat(78) + "\n";
            StringBuilder large = new StringBuilder(sheet);
            while (large.length() + comment.length() <= ProgramUploads.MAX_BYTES) {
                large.append(comment);
            }
            byte[] bytes = bytes(large.toString());

            Revision revision = uploaded(null, bytes, null).revision();

            assertThat(revision.sizeBytes()).isEqualTo(bytes.length);
            assertThat(programs.bytes(revision.id())).isEqualTo(bytes);
        }

        @Test
        void aProgramOfAnotherIsAsIfItWereNotThere() {
            Revision revision = uploaded(null, SampleProgram.bytes(), null).revision();
            Person other = Accounts.add(people, "Mateo Ironbark", Role.STUDENT);
            Person staff = Accounts.add(people, "Adaeze Lanternby", Role.TECHNICIAN);

            assertThat(programs.findFor(author.id(), revision.id())).contains(revision);
            assertThat(programs.findFor(staff.id(), revision.id())).contains(revision);
            assertThat(programs.findFor(other.id(), revision.id())).isEmpty();
            assertThat(programs.revisionsFor(other.id(), revision.program())).isEmpty();
            author = other;
            assertThat(refused(revision.program(), SampleProgram.bytes("x"), null)
                            .field())
                    .isEqualTo("program");
            assertThat(refused(ProgramId.next(), SampleProgram.bytes("x"), null).field())
                    .isEqualTo("program");
        }

        @Test
        void aLongListIsReadPageByPage() {
            List<Revision> made = new ArrayList<>();
            for (int i = 0; i < 5; i++) {
                // two of them in the same instant
                if (i != 3) {
                    clock.moveBy(Duration.ofMinutes(1));
                }
                made.add(
                        0,
                        uploaded(null, SampleProgram.bytes("Program " + i), null)
                                .revision());
            }
            List<Revision> listed = new ArrayList<>();
            Programs.Position after = null;
            do {
                Programs.Page page = programs.page(new Programs.PageRequest(author.id(), after, 2));
                listed.addAll(page.revisions());
                after = page.next();
            } while (after != null);

            assertThat(listed).hasSize(5).containsExactlyInAnyOrderElementsOf(made);
            assertThat(listed.get(0)).isEqualTo(made.get(0));
        }

        @Test
        void theDatabaseRefusesToChangeARevision() {
            Revision revision = uploaded(null, SampleProgram.bytes(), null).revision();

            for (String sql : new String[] {
                "update program_revisions set title = 'x' where id = :id",
                "delete from program_revisions where id = :id",
                "update program_contents set sha256 = sha256 where id = (select content_id from program_revisions "
                        + "where id = :id)"
            }) {
                assertThatThrownBy(() ->
                                jdbc.sql(sql).param("id", revision.id().value()).update())
                        .isInstanceOf(DataAccessException.class)
                        .hasMessageContaining("never changed");
            }
        }

        private Uploaded uploaded(@Nullable ProgramId program, byte[] bytes, @Nullable String declaration) {
            Outcome outcome = upload(program, bytes, declaration);
            assertThat(outcome).isInstanceOf(Uploaded.class);
            return (Uploaded) outcome;
        }

        private Refused refused(@Nullable ProgramId program, byte[] bytes, @Nullable String declaration) {
            Outcome outcome = upload(program, bytes, declaration);
            assertThat(outcome).isInstanceOf(Refused.class);
            return (Refused) outcome;
        }

        private Outcome upload(@Nullable ProgramId program, byte[] bytes, @Nullable String declaration) {
            return uploads.upload(new UploadProgram(author.id(), program, null, "peg.yaml", bytes, declaration));
        }

        private static byte[] bytes(String text) {
            return text.getBytes(StandardCharsets.UTF_8);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
