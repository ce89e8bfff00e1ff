package org.standclear.booking;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.BookingRequest.Refusal;
import org.standclear.cell.Cell;
import org.standclear.cell.CellFeatures;
import org.standclear.cell.Cells;
import org.standclear.people.Accommodations;
import org.standclear.people.AssignmentNeeds;
import org.standclear.people.AssignmentNeeds.Needs;
import org.standclear.people.Courses;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/**
 * Whether a cell has what a run needs: the assignment's tool and features, and the bench that the lab has promised to the
 * operator. Says why not to the operator and to lab staff only; nobody else asks for that person.
 */
@Service
@Transactional(readOnly = true)
public class CellFit {

    private final AssignmentNeeds assignmentNeeds;
    private final Accommodations accommodations;
    private final CellFeatures features;
    private final Cells cells;
    private final Courses courses;

    CellFit(
            AssignmentNeeds assignmentNeeds,
            Accommodations accommodations,
            CellFeatures features,
            Cells cells,
            Courses courses) {
        this.assignmentNeeds = assignmentNeeds;
        this.accommodations = accommodations;
        this.features = features;
        this.cells = cells;
        this.courses = courses;
    }

    /** What the lab's cells have now; read once for many questions. */
    public record Offered(Map<CellId, String> tools, Map<CellId, Set<String>> features) {

        /** Whether the cell has all of it. */
        public boolean fits(CellId cell, Needs needs) {
            return (needs.tool() == null || needs.tool().equals(tools.get(cell)))
                    && features.getOrDefault(cell, Set.of()).containsAll(needs.features());
        }

        /** Whether any cell has such a thing. */
        boolean anywhere(String feature) {
            return features.values().stream().anyMatch(words -> words.contains(feature));
        }
    }

    /** What cells have. */
    public Offered offered() {
        return new Offered(cells.fittedTools(), features.ofAll());
    }

    /** What the operator's runs need, for an assignment or for none; not why. */
    public Needs needs(PersonId operator, @Nullable AssignmentId assignment, Offered offered) {
        Needs asked = assignment == null ? Needs.NONE : assignmentNeeds.of(assignment);
        Set<String> all = new HashSet<>(asked.features());
        all.addAll(own(operator, offered));
        return new Needs(asked.tool(), all);
    }

    /** As long as no cell is known for its lower bench, staff set one up wherever it is needed. */
    private Set<String> own(PersonId operator, Offered offered) {
        return hasLowerBench(operator) && offered.anywhere(CellFeatures.LOWER_BENCH)
                ? Set.of(CellFeatures.LOWER_BENCH)
                : Set.of();
    }

    private boolean hasLowerBench(PersonId operator) {
        return accommodations
                .of(operator)
                .filter(Accommodations.Accommodation::lowerBench)
                .isPresent();
    }

    /** Which cells have what the operator's runs need; asks no more of the database than it has to. */
    public Predicate<CellId> fitting(PersonId operator, @Nullable AssignmentId assignment) {
        boolean any = !hasLowerBench(operator)
                && (assignment == null || assignmentNeeds.of(assignment).equals(Needs.NONE));
        if (any) {
            return cell -> true;
        }
        Offered offered = offered();
        Needs needs = needs(operator, assignment, offered);
        return cell -> offered.fits(cell, needs);
    }

    /** Why the person cannot work at some cells whatever the run is for, by cell; said to that person. */
    public Map<CellId, String> ownObstacles(PersonId operator) {
        if (!hasLowerBench(operator)) {
            return Map.of();
        }
        Offered offered = offered();
        Needs own = new Needs(null, own(operator, offered));
        Map<CellId, String> obstacles = new HashMap<>();
        cells.all().stream()
                .map(Cell::id)
                .filter(cell -> !offered.fits(cell, own))
                .forEach(cell -> obstacles.put(
                        cell, "There is no lower bench here, which the lab keeps for you." + fitting(own, offered)));
        return obstacles;
    }

    /** Why the assignment cannot be done at the cell; empty when it can. */
    public Optional<String> obstacle(Cell cell, PersonId operator, AssignmentId assignment, Offered offered) {
        Needs needs = assignmentNeeds.of(assignment);
        if (offered.fits(cell.id(), needs)) {
            return Optional.empty();
        }
        String title = courses.assignmentOf(operator, assignment)
                .map(one -> "\"" + one.title() + "\"")
                .orElse("This assignment");
        String tool = needs.tool();
        boolean wrongTool = tool != null && !tool.equals(offered.tools().get(cell.id()));
        Set<String> missing = new TreeSet<>(needs.features());
        missing.removeAll(offered.features().getOrDefault(cell.id(), Set.of()));
        String has = wrongTool
                ? cell.name() + " carries " + offered.tools().getOrDefault(cell.id(), "no tool")
                : cell.name() + " has no " + String.join(", no ", missing);
        return Optional.of(title + " needs " + needs.words() + "; " + has + "." + fitting(needs, offered));
    }

    /** The tool of the assignment, where it needs a certain one. */
    public Optional<String> toolOf(@Nullable AssignmentId assignment) {
        return assignment == null
                ? Optional.empty()
                : Optional.ofNullable(assignmentNeeds.of(assignment).tool());
    }

    Optional<Refusal> refusal(BookingRequest request) {
        PersonId operator = request.wanted().operator();
        AssignmentId assignment = request.wanted().assignment();
        if (fitting(operator, assignment).test(request.cell().id())) {
            return Optional.empty();
        }
        Offered offered = offered();
        Needs own = new Needs(null, own(operator, offered));
        if (!offered.fits(request.cell().id(), own)) {
            return Refusal.of(
                    "bench-fit",
                    request.cell().name() + " has no lower bench, which the lab keeps for "
                            + (request.forOneself() ? "you" : request.operator().printedName()) + "."
                            + fitting(own, offered));
        }
        return assignment == null
                ? Optional.empty()
                : obstacle(request.cell(), operator, assignment, offered)
                        .map(says -> new Refusal("assignment-fit", says));
    }

    private String fitting(Needs needs, Offered offered) {
        String names = cells.all().stream()
                .filter(cell -> cell.state().mayRun() && offered.fits(cell.id(), needs))
                .map(Cell::name)
                .collect(Collectors.joining(", "));
        return names.isEmpty() ? " No cell that runs has it now; ask lab staff." : " These have it: " + names + ".";
    }
}
