package org.standclear.architecture;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.conditions.ArchPredicates.are;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchRule;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.springframework.web.bind.annotation.RequestMapping;
import org.standclear.architecture.planted.web.PublicPages;

/** Pages are package-private, stand in {@code web} packages, and neither decide nor ask the database. */
class PagesTests {

    private static final int HANDLERS = 6;

    private static final DescribedPredicate<JavaClass> HANDLE_REQUESTS = DescribedPredicate.describe(
            "handle requests", type -> !handlers(type).isEmpty());

    private static final ArchRule HIDDEN = classes()
            .that(HANDLE_REQUESTS)
            .should()
            .bePackagePrivate()
            .andShould()
            .resideInAPackage("..web..")
            .allowEmptyShould(true);

    private static final ArchRule NO_SQL = noClasses()
            .that()
            .resideInAPackage("..web..")
            .should()
            .dependOnClassesThat(are(resideInAnyPackage("java.sql..", "javax.sql..", "org.springframework.jdbc..")
                    .or(resideInAPackage("org.springframework.data.."))))
            .allowEmptyShould(true);

    private static List<JavaMethod> handlers(JavaClass type) {
        return type.getMethods().stream()
                .filter(method -> method.isAnnotatedWith(RequestMapping.class)
                        || method.isMetaAnnotatedWith(RequestMapping.class))
                .toList();
    }

    @Test
    void areHiddenInTheirPackages() {
        HIDDEN.check(MainClasses.ALL);
    }

    @Test
    void askNoDatabase() {
        NO_SQL.check(MainClasses.ALL);
    }

    @Test
    void haveFewHandlersEach() {
        assertThat(MainClasses.ALL.stream().filter(type -> handlers(type).size() > HANDLERS))
                .as("types with more than %d handlers", HANDLERS)
                .isEmpty();
    }

    @Test
    void areFound() {
        assertThat(MainClasses.ALL.stream().filter(HANDLE_REQUESTS)).hasSizeGreaterThan(15);
    }

    @Test
    void catchesAPublicPageThatTalksSql() {
        JavaClasses planted = new ClassFileImporter().importClasses(PublicPages.class);

        assertThatThrownBy(() -> HIDDEN.check(planted)).hasMessageContaining("package private");
        assertThatThrownBy(() -> NO_SQL.check(planted)).hasMessageContaining("java.sql.Connection");
        assertThat(handlers(planted.get(PublicPages.class))).hasSize(1);
    }
}
