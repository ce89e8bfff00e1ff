package org.standclear.architecture;

import com.sun.source.tree.BlockTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.LineMap;
import com.sun.source.tree.MethodTree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.SourcePositions;
import com.sun.source.util.TreeScanner;
import com.sun.source.util.Trees;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import javax.tools.JavaFileObject;
import javax.tools.SimpleJavaFileObject;
import javax.tools.ToolProvider;

/** Counts the lines between the braces of methods, as the compiler's parser sees them. */
final class MethodLengths {

    private MethodLengths() {}

    /** Names each method whose body has more lines than that. */
    static List<String> above(int most, List<TextFile> files) {
        JavacTask task = (JavacTask) ToolProvider.getSystemJavaCompiler()
                .getTask(
                        null,
                        null,
                        problem -> {},
                        List.of(),
                        null,
                        files.stream().map(Source::new).toList());
        SourcePositions positions = Trees.instance(task).getSourcePositions();
        List<String> found = new ArrayList<>();
        try {
            for (CompilationUnitTree unit : task.parse()) {
                unit.accept(new Scanner(most, unit, positions), found);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return found;
    }

    /** A text in the form that the parser takes. */
    private static final class Source extends SimpleJavaFileObject {

        private final TextFile file;

        Source(TextFile file) {
            super(URI.create("string:///" + file.path().toString().replace('\\', '/')), JavaFileObject.Kind.SOURCE);
            this.file = file;
        }

        @Override
        public CharSequence getCharContent(boolean ignoreEncodingErrors) {
            return file.text();
        }
    }

    /** Walks one file and notes its long methods. */
    private static final class Scanner extends TreeScanner<Void, List<String>> {

        private final int most;
        private final CompilationUnitTree unit;
        private final SourcePositions positions;

        Scanner(int most, CompilationUnitTree unit, SourcePositions positions) {
            this.most = most;
            this.unit = unit;
            this.positions = positions;
        }

        @Override
        public Void visitMethod(MethodTree method, List<String> found) {
            BlockTree body = method.getBody();
            long lines = body == null ? 0 : lines(body);
            if (lines > most) {
                found.add(lines + " lines in " + method.getName() + " of "
                        + unit.getSourceFile().getName());
            }
            return super.visitMethod(method, found);
        }

        private long lines(BlockTree body) {
            LineMap map = unit.getLineMap();
            long first = map.getLineNumber(positions.getStartPosition(unit, body));
            return map.getLineNumber(positions.getEndPosition(unit, body)) - first - 1;
        }
    }
}
