package org.standclear.check;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.standclear.check.picture.ProgramPictures;
import org.standclear.core.check.RuleSet;
import org.standclear.platform.ids.AnswerId;

/**
 * Drawings of stored answers. They are made from the same file and cell version by the same computation; as neither ever
 * changes, those looked at last are kept ready.
 */
@Service
public class Pictures {

    private static final int KEPT = 24;

    private final ProgramChecks checks;
    private final Map<AnswerId, ProgramPictures> kept = new LinkedHashMap<>(KEPT, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<AnswerId, ProgramPictures> eldest) {
            return size() > KEPT;
        }
    };

    Pictures(ProgramChecks checks) {
        this.checks = checks;
    }

    /** The drawings; none of an answer by other rules than today's, and none when there was no turn to make them. */
    public Optional<ProgramPictures> of(AnswerBrief answer) {
        if (!answer.ruleSet().equals(RuleSet.CURRENT)) {
            return Optional.empty();
        }
        synchronized (kept) {
            ProgramPictures known = kept.get(answer.id());
            if (known != null) {
                return Optional.of(known);
            }
        }
        Optional<ProgramPictures> made = checks.again(answer.id()).map(ProgramPictures::of);
        made.ifPresent(pictures -> keep(answer.id(), pictures));
        return made;
    }

    private void keep(AnswerId id, ProgramPictures pictures) {
        synchronized (kept) {
            kept.put(id, pictures);
        }
    }
}
