package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.check.StoredAnswer;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.program.ProgramUploads;
import org.standclear.program.Revision;
import org.standclear.program.SampleProgram;
import org.standclear.testing.MovableClock;
import org.standclear.trail.RecordedEntry;
import org.standclear.trail.TrailReader;

/** What tests at the bench share: a scene of their own and the doors. */
public abstract class BenchCases {

    @Autowired
    protected ApplicationContext application;

    @Autowired
    protected MovableClock clock;

    @Autowired
    protected JdbcClient jdbc;

    @Autowired
    protected Releases releases;

    @Autowired
    protected SignoffRecord signed;

    @Autowired
    private TrailReader trail;

    @Autowired
    private Labs labs;

    private @Nullable BenchScene scene;

    @BeforeEach
    protected void aScene() {
        scene = new BenchScene(application);
    }

    protected BenchScene scene() {
        return Objects.requireNonNull(scene);
    }

    /** The kinds of entries about the scene's booking, first to last. */
    protected List<String> record() {
        return trail.about(labs.theLab().id(), scene().booking.toString()).stream()
                .map(RecordedEntry::kind)
                .toList();
    }

    /** Noor's program with that text, named for the booking. */
    protected Revision attach(String file, String text) {
        var asked = new ProgramUploads.UploadProgram(
                scene().noor.id(), null, null, file, text.getBytes(StandardCharsets.UTF_8), null);
        Revision kept = is(
                        ProgramUploads.Uploaded.class,
                        application.getBean(ProgramUploads.class).upload(asked))
                .revision();
        scene().preparation.attach(scene().booking, kept.id(), scene().noor.id());
        return kept;
    }

    /** Not everything about it can be checked: nobody declared what the part weighs. */
    protected void attachWithoutItsPart() {
        attach("peg.yaml", SampleProgram.sheet("Peg").replace("  part-kg: 0.06\n", ""));
    }

    /** What the check answers about the booking's program. */
    protected StoredAnswer answer() {
        return Objects.requireNonNull(scene().preparation.look(scene().booking).answer());
    }

    /** A waiver for that answer until the slot's end. */
    protected Waiver waived(String reason, PersonId by) {
        var given = application
                .getBean(Waivers.class)
                .give(new Waivers.GiveWaiver(
                        scene().booking, answer().id(), reason, scene().now().end(), null, by));
        return is(Waivers.Given.Kept.class, given).waiver();
    }

    protected static <T> T is(Class<T> type, Object outcome) {
        assertThat(outcome).isInstanceOf(type);
        return type.cast(outcome);
    }
}
