package org.standclear.cell;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.cell.CellRegister.Decided;
import org.standclear.cell.CellRegister.NewProposal;
import org.standclear.cell.CellRegister.Proposed;
import org.standclear.cell.Equipment.Item;
import org.standclear.cell.Equipment.Kept;
import org.standclear.cell.Equipment.Kind;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** Rewrites cell files for parts and fixtures and leaves reading, rules and approval to the register of cells. */
@Service
class JdbcPartChanges implements PartChanges {

    private final Cells cells;
    private final CellRegister register;
    private final Equipment equipment;
    private final ToolChanges toolChanges;

    JdbcPartChanges(Cells cells, CellRegister register, Equipment equipment, ToolChanges toolChanges) {
        this.cells = cells;
        this.register = register;
        this.equipment = equipment;
        this.toolChanges = toolChanges;
    }

    @Override
    public List<String> at(CellId cell) {
        return PartsText.codes(cells.current(cell).file());
    }

    @Override
    @Transactional
    public Approved approve(UUID id, PersonId by) {
        Item before = equipment.find(id).flatMap(this::inUse).orElse(null);
        if (equipment.approve(id, by) instanceof Kept.Refused no) {
            return new Approved.Refused(no.field(), no.says());
        }
        Item after = equipment.find(id).orElseThrow();
        List<String> followed = new ArrayList<>();
        if (before != null && isOtherwise(before, after)) {
            cells.all().forEach(cell -> follow(cell, after, by).ifPresent(followed::add));
        }
        return new Approved.Done(after, followed);
    }

    /** The approved row of the same code that the item would take the place of. */
    private Optional<Item> inUse(Item item) {
        return equipment.all().stream()
                .filter(one -> one.approved()
                        && one.kind() == item.kind()
                        && one.code().equals(item.code()))
                .findFirst();
    }

    private static boolean isOtherwise(Item before, Item after) {
        return before.massKg() != after.massKg()
                || !before.offsetMm().equals(after.offsetMm())
                || !Objects.equals(before.overhangMm(), after.overhangMm())
                || before.edges() != after.edges();
    }

    private Optional<String> follow(Cell found, Item item, PersonId by) {
        CellVersion inForce = cells.current(found.id());
        if (item.kind() == Kind.TOOL) {
            return CellGates.sameCode(inForce.fittedTool(), item.code())
                    ? Optional.of(changeTool(found, item, by))
                    : Optional.empty();
        }
        if (!PartsText.codes(inForce.file()).contains(item.code())) {
            return Optional.empty();
        }
        Cell cell = cells.lock(found.id());
        String byHand = cell.name() + ": propose its next version by hand, its file cannot be rewritten by itself";
        Optional<String> file = next(cell, item, null);
        if (file.isEmpty()) {
            return Optional.of(byHand);
        }
        String reason = "The " + item.kind().words() + " " + item.code() + " was measured anew";
        Proposed proposed = register.propose(
                new NewProposal(cell.id(), file.get(), reason, item.registeredBy(), cell.startOffsetMinutes()));
        return proposed instanceof Proposed.Kept kept
                        && register.approve(kept.proposal().id(), by, cell.currentVersion())
                                instanceof Decided.Done done
                ? Optional.of(cell.name() + " is at version " + done.number() + " now")
                : Optional.of(byHand);
    }

    private String changeTool(Cell cell, Item item, PersonId by) {
        return toolChanges.begin(cell.id(), item.id(), by) instanceof ToolChanges.Outcome.Going
                ? cell.name() + ": a tool change is begun, " + item.code() + " is read at the robot by two people"
                : cell.name() + ": " + item.code() + " is fitted there; begin a tool change";
    }

    private Optional<String> next(Cell cell, Item item, @Nullable Footprint where) {
        String file = cells.current(cell.id()).file();
        int version = cell.currentVersion() + 1;
        return item.kind() == Kind.PART
                ? PartsText.withPart(file, version, item)
                : PartsText.withFixture(file, version, item, where);
    }

    @Override
    @Transactional
    public Proposed put(CellId id, UUID itemId, @Nullable Footprint where, PersonId by) {
        Item item = equipment.find(itemId).orElse(null);
        if (item == null || item.kind() == Kind.TOOL || !equipment.inUse(itemId)) {
            return new Proposed.Refused(
                    "item",
                    "Choose a part or a fixture that a second person has approved and nobody has measured anew since.");
        }
        if (item.overhangMm() == null) {
            return new Proposed.Refused(
                    "item", "Nobody has measured how far it reaches or how high it stands. Register it once more.");
        }
        if (item.kind() == Kind.FIXTURE && (where == null || !where.isOne())) {
            return new Proposed.Refused(
                    "where", "Say where the fixture stands: x and y from the smaller to the greater.");
        }
        Cell cell = cells.find(id).orElseThrow();
        return propose(cell, next(cell, item, where), "Now at the cell: " + words(item), by);
    }

    @Override
    @Transactional
    public Proposed takeAway(CellId id, UUID itemId, PersonId by) {
        Cell cell = cells.find(id).orElseThrow();
        Item item = equipment.find(itemId).orElse(null);
        String file = cells.current(id).file();
        if (item == null || !PartsText.codes(file).contains(item.code())) {
            return new Proposed.Refused("item", "That is not at " + cell.name() + ".");
        }
        return propose(cell, PartsText.taken(file, cell.currentVersion() + 1, item), "Taken away: " + words(item), by);
    }

    private Proposed propose(Cell cell, Optional<String> file, String reason, PersonId by) {
        return file.isEmpty()
                ? new Proposed.Refused(
                        "item",
                        "The file of " + cell.name()
                                + " cannot be rewritten by itself. Propose a new version on the cell's page.")
                : register.propose(new NewProposal(cell.id(), file.get(), reason, by, cell.startOffsetMinutes()));
    }

    private static String words(Item item) {
        return item.kind().words() + " " + item.code() + ", " + item.name();
    }
}
