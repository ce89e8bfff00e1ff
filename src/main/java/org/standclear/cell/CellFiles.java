package org.standclear.cell;

/** Reads cell files. */
interface CellFiles {

    /** Reads a file that somebody wants in force. */
    CellReading read(String file);

    /** What a version that is or was in force says; it was readable when it was approved. */
    default CellFacts factsOf(CellVersion version) {
        return known(version.file());
    }

    /** What a file says that was read before. */
    default CellFacts known(String file) {
        if (read(file) instanceof CellReading.Readable readable) {
            return readable.facts();
        }
        throw new IllegalStateException("a stored cell file can no longer be read");
    }

    /** What reading gave. */
    sealed interface CellReading {

        /** The file is a cell file. */
        record Readable(CellFacts facts) implements CellReading {}

        /** It is not; one line says what is wrong and where. */
        record Unreadable(String says) implements CellReading {}
    }
}
