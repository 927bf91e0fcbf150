package wallplate;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import org.junit.jupiter.api.Test;
import org.springframework.modulith.core.ApplicationModules;

/** The architecture: which module may use which, and where each library may be used. */
@AnalyzeClasses(packages = "wallplate", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

    @ArchTest
    static final ArchRule openCvStaysInItsOwnPackages = noClasses()
            .that()
            .resideOutsideOfPackage("..opencv..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("org.opencv..");

    @ArchTest
    static final ArchRule pdfBoxStaysInItsOwnPackages = noClasses()
            .that()
            .resideOutsideOfPackage("..pdf..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("org.apache.pdfbox..");

    @ArchTest
    static final ArchRule pureModulesKnowNoFramework = noClasses()
            .that()
            .resideInAnyPackage(
                    "wallplate.geometry", "wallplate.task", "wallplate.solver..", "wallplate.measure..", "wallplate.marking..",
                    "wallplate.statistics..")
            .and()
            .doNotHaveSimpleName("package-info")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("org.springframework..", "org.opencv..", "java.sql..", "jakarta..", "org.apache.pdfbox..");

    @ArchTest
    static final ArchRule schedulingStaysInJobs = noClasses()
            .that()
            .resideOutsideOfPackage("wallplate.jobs..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("com.github.kagkarlsson..");

    @ArchTest
    static final ArchRule storeClientStaysInStorage = noClasses()
            .that()
            .resideOutsideOfPackage("..storage..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("software.amazon..");

    @Test
    void everyModuleUsesOnlyWhatItMay() {
        ApplicationModules.of(Wallplate.class).verify();
    }
}
