package org.standclear.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.springframework.scheduling.annotation.Scheduled;
import org.standclear.architecture.planted.RoundForOneLab;
import org.standclear.architecture.planted.ThreadForOneLab;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.lab.Labs;

/** What happens by itself happens for every lab, each in its scope; outside of any scope it would be for the first alone. */
class LabRoundsTests {

    /** Of no lab in particular: tokens of forms that were sent. */
    private static final Set<String> OF_NO_LAB = Set.of("UsedTokens");

    /**
     * Stops a solver, does a part of a search beside another, listens to the database, sends signs of life, reads classes: no
     * lab's data is read or written in these threads. Migrations are for all labs alike, and mail was written in its lab's
     * scope before.
     */
    private static final Set<String> THREADS_OF_NO_LAB = Set.of(
            "Stopper", "Beside", "DatabaseChannel", "LiveStreams", "ClassesAhead", "ShapedDatabase", "MailRounds");

    private static final Set<String> STARTS_THREADS = Set.of(
            "java.util.concurrent.Executors",
            "java.util.concurrent.CompletableFuture",
            "java.util.concurrent.ForkJoinPool");

    private static List<String> forOneLabOnly(JavaClasses classes) {
        return classes.stream()
                .filter(LabRoundsTests::happensByItself)
                .filter(type -> !OF_NO_LAB.contains(type.getSimpleName()))
                .filter(type -> type.getMethodCallsFromSelf().stream()
                        .noneMatch(call -> call.getTargetOwner().isEquivalentTo(Labs.class)
                                && call.getName().startsWith("forEach")))
                .map(JavaClass::getSimpleName)
                .toList();
    }

    private static boolean happensByItself(JavaClass type) {
        return type.getMethods().stream().anyMatch(method -> method.isAnnotatedWith(Scheduled.class));
    }

    @Test
    void goOverAllLabs() {
        assertThat(MainClasses.ALL.stream().filter(LabRoundsTests::happensByItself))
                .hasSizeGreaterThan(4);
        assertThat(forOneLabOnly(MainClasses.ALL)).isEmpty();
    }

    private static List<String> threadsOfUnknownLab(JavaClasses classes) {
        return classes.stream()
                .filter(LabRoundsTests::startsThreads)
                .filter(type -> !THREADS_OF_NO_LAB.contains(type.getSimpleName()))
                .filter(type -> type.getMethodCallsFromSelf().stream()
                        .noneMatch(call -> call.getTargetOwner().isEquivalentTo(LabScope.class)))
                .map(JavaClass::getSimpleName)
                .toList();
    }

    private static boolean startsThreads(JavaClass type) {
        return type.getConstructorCallsFromSelf().stream()
                        .anyMatch(call -> call.getTargetOwner().getName().equals("java.lang.Thread"))
                || type.getMethodCallsFromSelf().stream()
                        .anyMatch(call ->
                                STARTS_THREADS.contains(call.getTargetOwner().getName()));
    }

    @Test
    void threadsOfTheirOwnWorkInTheScopeOfWhoeverStartedThem() {
        assertThat(MainClasses.ALL.stream().filter(LabRoundsTests::startsThreads))
                .hasSizeGreaterThan(3);
        assertThat(threadsOfUnknownLab(MainClasses.ALL)).isEmpty();
    }

    @Test
    void catchesAThreadOfNoScope() {
        assertThat(threadsOfUnknownLab(new ClassFileImporter().importClasses(ThreadForOneLab.class)))
                .containsExactly("ThreadForOneLab");
    }

    @Test
    void catchesOneThatDoesNot() {
        assertThat(forOneLabOnly(new ClassFileImporter().importClasses(RoundForOneLab.class)))
                .containsExactly("RoundForOneLab");
    }
}
