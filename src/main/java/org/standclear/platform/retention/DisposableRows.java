package org.standclear.platform.retention;

import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Records of one kind that one query of their room finds; the room says only how one of them goes. */
public abstract class DisposableRows implements Disposable {

    /** Stands in the place of words that were taken out. */
    protected static final String GONE = "Taken out at the end of its time.";

    private final RecordKind kind;
    private final DueRows rows;

    /** Records of that kind, as the query reads them. */
    protected DisposableRows(RecordKind kind, DueRows rows) {
        this.kind = kind;
        this.rows = rows;
    }

    @Override
    public final RecordKind kind() {
        return kind;
    }

    @Override
    public final List<Candidate> startedIn(Stretch stretch) {
        return rows.startedIn(stretch);
    }

    @Override
    public final Optional<Candidate> find(UUID id) {
        return rows.find(id);
    }
}
