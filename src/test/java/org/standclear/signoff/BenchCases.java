package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.platform.lab.Labs;
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

    protected static <T> T is(Class<T> type, Object outcome) {
        assertThat(outcome).isInstanceOf(type);
        return type.cast(outcome);
    }
}
