package org.duskline.web;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchRule;
import java.sql.SQLException;
import java.time.Clock;
import java.time.InstantSource;
import java.util.Date;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Holds the order in which the parts know each other: the data flows one way, the imports the other. */
class ArchitectureTest {
    private static final JavaClasses OURS = new ClassFileImporter()
            .withImportOption(place -> !place.contains("/test-classes/") && !place.contains("-tests.jar"))
            .importPackages("org.duskline");

    @Test
    void all_three_modules_are_looked_at() {
        assertThat(List.of("org.duskline.collector.", "org.duskline.analyzer.", "org.duskline.web."))
                .allSatisfy(start -> assertThat(OURS.stream())
                        .anyMatch(type -> type.getPackageName().startsWith(start)));
    }

    @Test
    void what_stores_runs_without_what_thinks() {
        nothingIn("org.duskline.collector..").knows("org.duskline.analyzer..", "org.duskline.web..");
    }

    @Test
    void what_thinks_runs_without_what_shows() {
        nothingIn("org.duskline.analyzer..").knows("org.duskline.web..");
    }

    @Test
    void no_two_packages_know_each_other_in_a_ring() {
        check(slices().matching("org.duskline.(**)").should().beFreeOfCycles());
    }

    /** The exception of a failed statement may pass through; whoever sees it still cannot speak SQL. */
    @Test
    void sql_is_spoken_in_the_stores_alone() {
        DescribedPredicate<JavaClass> sql = resideInAnyPackage(
                        "java.sql..", "javax.sql..", "org.sqlite..", "org.jdbi..")
                .and(DescribedPredicate.not(JavaClass.Predicates.type(SQLException.class)));
        check(noClasses()
                .that()
                .resideOutsideOfPackages(
                        "..store..",
                        "..outbox..",
                        "..visit..",
                        "..replay..",
                        "..deliver..",
                        "..door..",
                        "..instruction..")
                .should()
                .dependOnClassesThat(sql));
    }

    @Test
    void mqtt_is_spoken_at_the_intake_alone() {
        onlyIn("org.duskline.collector.intake..").knows("org.eclipse.paho..", "org.apache.activemq..");
    }

    @Test
    void http_is_spoken_by_the_pages_alone() {
        onlyIn("org.duskline.web.page..").knows("io.javalin..", "jakarta.servlet..", "org.eclipse.jetty..");
    }

    @Test
    void detectors_know_no_files_threads_or_databases() {
        check(noClasses()
                .that()
                .resideInAnyPackage("org.duskline.analyzer.stats..", "org.duskline.analyzer.detect..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "java.nio.file..", "java.net..", "java.sql..", "java.util.concurrent..", "org.slf4j..")
                .orShould()
                .dependOnClassesThat()
                .areAssignableTo(Thread.class)
                .allowEmptyShould(true));
    }

    @Test
    void only_the_program_itself_asks_the_machine_for_the_time() {
        check(noClasses()
                .that()
                .resideOutsideOfPackage("org.duskline.web.app..")
                .should()
                .callMethodWhere(asksTheMachineForTheTime())
                .orShould()
                .callConstructor(Date.class));
    }

    private static DescribedPredicate<JavaMethodCall> asksTheMachineForTheTime() {
        Set<String> clocks = Set.of(Clock.class.getName(), InstantSource.class.getName());
        return DescribedPredicate.describe("ask the machine for the time", call -> {
            String owner = call.getTargetOwner().getName();
            String name = call.getName();
            boolean now = owner.startsWith("java.time.")
                    && name.equals("now")
                    && call.getTarget().getRawParameterTypes().isEmpty();
            boolean clock = clocks.contains(owner) && name.startsWith("system");
            boolean millis = owner.equals("java.lang.System") && name.equals("currentTimeMillis");
            return now || clock || millis;
        });
    }

    @Test
    void nothing_static_changes() {
        check(fields().that().areStatic().should().beFinal());
    }

    @Test
    void packages_are_named_for_what_passes_through_them() {
        check(noClasses()
                .should()
                .resideInAnyPackage("..util..", "..utils..", "..impl..", "..model..", "..service..", "..common..")
                .orShould()
                .haveNameMatching(".*(Manager|Util|Utils|Helper|Impl)"));
    }

    private record Where(DescribedPredicate<JavaClass> classes) {
        void knows(String... packages) {
            check(noClasses().that(classes).should().dependOnClassesThat().resideInAnyPackage(packages));
        }
    }

    private static Where nothingIn(String place) {
        return new Where(resideInAnyPackage(place));
    }

    private static Where onlyIn(String place) {
        return new Where(DescribedPredicate.not(resideInAnyPackage(place)));
    }

    private static void check(ArchRule rule) {
        rule.check(OURS);
    }
}
