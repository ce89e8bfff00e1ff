package org.standclear.incident.records;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.incident.FrozenEvidence;
import org.standclear.incident.Incident;
import org.standclear.incident.records.EvidencePieces.Found;
import org.standclear.platform.ids.IncidentId;
import org.standclear.run.Run;
import org.standclear.run.Runs;

/** Compares frozen evidence with what the lab has now. */
@Service
@Transactional(readOnly = true)
class StoredEvidence implements FrozenEvidence {

    private final IncidentRows incidents;
    private final EvidenceRows rows;
    private final EvidencePieces pieces;
    private final Runs runs;

    StoredEvidence(IncidentRows incidents, EvidenceRows rows, EvidencePieces pieces, Runs runs) {
        this.incidents = incidents;
        this.rows = rows;
        this.pieces = pieces;
        this.runs = runs;
    }

    @Override
    public Optional<Recomputed> of(IncidentId id) {
        Incident incident = incidents.find(id).orElse(null);
        EvidenceRows.Head head = rows.find(id).orElse(null);
        if (incident == null || head == null) {
            return Optional.empty();
        }
        List<Found> frozen = rows.pieces(head.id());
        Map<String, Set<String>> now = now(incident, frozen);
        List<Piece> compared = new ArrayList<>();
        for (Found piece : frozen) {
            boolean holds = now.getOrDefault(key(piece), Set.of()).contains(piece.sha256());
            compared.add(new Piece(
                    compared.size() + 1, piece.kind(), piece.reference(), piece.words(), piece.sha256(), holds));
        }
        boolean listHolds =
                frozen.size() == head.pieces() && EvidenceRows.hash(frozen).equals(head.sha256());
        return Optional.of(new Recomputed(head.frozenAt(), head.because(), head.sha256(), listHolds, compared));
    }

    /**
     * The hashes that each piece may have; one, but for a release whose e-stop changed hands. What has come since is not
     * looked at: a run goes on after its evidence was frozen.
     */
    private Map<String, Set<String>> now(Incident incident, List<Found> frozen) {
        Run run = incident.run() == null ? null : runs.find(incident.run()).orElse(null);
        Map<String, Set<String>> hashes = new HashMap<>();
        pieces.now(incident.cell(), run).forEach(piece -> add(piece, hashes));
        if (run != null) {
            pieces.handedOver(run).forEach(piece -> add(piece, hashes));
        }
        frozen.stream()
                .filter(piece -> !hashes.containsKey(key(piece)))
                .forEach(piece -> pieces.again(incident.cell(), piece).ifPresent(again -> add(again, hashes)));
        return hashes;
    }

    private static void add(Found piece, Map<String, Set<String>> hashes) {
        hashes.computeIfAbsent(key(piece), key -> new HashSet<>()).add(piece.sha256());
    }

    private static String key(Found piece) {
        return piece.kind() + ' ' + piece.reference();
    }
}
