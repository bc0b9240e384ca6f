package chillwright;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.belongToAnyOf;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.AccessTarget;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.text.Normalizer;
import java.util.Map;
import java.util.Set;

/**
 * The rooms of the program and the arrows between them.
 *
 * <p>Rooms are written as exact packages: a pattern such as {@code ..core..} would also match a
 * library whose package has that name somewhere in it. A rule about a room that may still be empty
 * says so with {@code withOptionalLayers}; it holds from the room's first class on.
 */
@AnalyzeClasses(packages = "chillwright", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
  private static final String CORE = "chillwright.core..";
  private static final String RULEBOOK = "chillwright.rulebook..";
  private static final String LOGFILE = "chillwright.logfile..";
  private static final String STORAGE = "chillwright.storage..";
  private static final String SERVICE = "chillwright.service..";
  private static final String WEB = "chillwright.web..";
  private static final String PRINT = "chillwright.print..";
  private static final String PAPER = "chillwright.paper..";
  private static final String CLI = "chillwright.cli..";

  /** Ways to ask the machine for the time or for its time zone, by class. */
  private static final Map<String, Set<String>> CLOCKS =
      Map.of(
          "java.lang.System", Set.of("currentTimeMillis", "nanoTime"),
          "java.time.ZoneId", Set.of("systemDefault"),
          "java.util.TimeZone", Set.of("getDefault"),
          "java.util.Calendar", Set.of("getInstance"),
          "java.util.GregorianCalendar", Set.of("<init>"),
          "java.util.Date", Set.of("<init>"));

  @ArchTest
  static final ArchRule every_class_is_in_a_room =
      classes()
          .should()
          .resideInAnyPackage(CORE, RULEBOOK, LOGFILE, STORAGE, SERVICE, WEB, PRINT, PAPER, CLI);

  /** Values, collections and time of the JDK, numerical routines, and the core itself: no I/O. */
  @ArchTest
  static final ArchRule core_needs_only_values_and_time =
      classes()
          .that()
          .resideInAPackage(CORE)
          .should()
          .onlyDependOnClassesThat(
              resideInAnyPackage(
                      "java.lang",
                      "java.lang.annotation",
                      "java.lang.invoke", // lambdas and string concatenation
                      "java.lang.runtime", // the methods of a record
                      "java.math",
                      "java.time..",
                      "java.util",
                      "java.util.function",
                      "java.util.regex",
                      "java.util.stream",
                      "org.hipparchus..", // least squares, quantiles
                      "org.chocosolver..", // plans
                      CORE)
                  // The forms of Unicode: text in, text out, in no language.
                  .or(belongToAnyOf(Normalizer.class)));

  @ArchTest
  static final ArchRule core_has_no_clock =
      noClasses()
          .that()
          .resideInAPackage(CORE)
          .should()
          .accessTargetWhere(asks_a_clock())
          .orShould()
          .dependOnClassesThat()
          .haveFullyQualifiedName("java.time.Clock")
          .orShould()
          .dependOnClassesThat()
          .haveFullyQualifiedName("java.time.InstantSource")
          .because("the moment is handed in, so that a finding depends on the record alone");

  /**
   * Arrows run one way: cli, web, then service and print, then storage, rulebook and logfile, then
   * core. A room may reach past its neighbour, except that storage is reached through service only.
   */
  @ArchTest
  static final ArchRule arrows_run_one_way =
      layeredArchitecture()
          .consideringOnlyDependenciesInLayers()
          .withOptionalLayers(true) // rooms may still be empty
          .layer("core")
          .definedBy(CORE)
          .layer("rulebook")
          .definedBy(RULEBOOK)
          .layer("logfile")
          .definedBy(LOGFILE)
          .layer("storage")
          .definedBy(STORAGE)
          .layer("print")
          .definedBy(PRINT)
          .layer("paper")
          .definedBy(PAPER)
          .layer("service")
          .definedBy(SERVICE)
          .layer("web")
          .definedBy(WEB)
          .layer("cli")
          .definedBy(CLI)
          .whereLayer("core")
          .mayNotAccessAnyLayer()
          .whereLayer("rulebook")
          .mayOnlyAccessLayers("core")
          .whereLayer("logfile")
          .mayOnlyAccessLayers("core")
          .whereLayer("storage")
          .mayOnlyAccessLayers("core")
          .whereLayer("print")
          .mayOnlyAccessLayers("core")
          .whereLayer("paper")
          .mayOnlyAccessLayers("print", "core")
          .whereLayer("service")
          .mayOnlyAccessLayers("storage", "rulebook", "logfile", "core")
          .whereLayer("web")
          .mayOnlyAccessLayers("print", "paper", "service", "rulebook", "logfile", "core")
          .whereLayer("cli")
          .mayOnlyAccessLayers("web", "print", "service", "rulebook", "logfile", "core");

  /** What is measured, then what is written down, then what is ruled, then how long it keeps. */
  @ArchTest
  static final ArchRule core_is_built_upwards =
      layeredArchitecture()
          .consideringOnlyDependenciesInLayers()
          .withOptionalLayers(true) // packages may still be empty
          .layer("measure")
          .definedBy("chillwright.core.measure..")
          .layer("log")
          .definedBy("chillwright.core.log..")
          .layer("rules")
          .definedBy("chillwright.core.rules..")
          .layer("keeping")
          .definedBy("chillwright.core.keeping..")
          .layer("heat")
          .definedBy("chillwright.core.heat..")
          .layer("portions")
          .definedBy("chillwright.core.portions..")
          .layer("ahead")
          .definedBy("chillwright.core.ahead..")
          .layer("forecast")
          .definedBy("chillwright.core.forecast..")
          .layer("learning")
          .definedBy("chillwright.core.learning..")
          .layer("plan")
          .definedBy("chillwright.core.plan..")
          .whereLayer("measure")
          .mayNotAccessAnyLayer()
          .whereLayer("log")
          .mayOnlyAccessLayers("measure")
          .whereLayer("rules")
          .mayOnlyAccessLayers("measure", "log")
          .whereLayer("keeping")
          .mayOnlyAccessLayers("measure", "log", "rules")
          .whereLayer("heat")
          .mayOnlyAccessLayers("measure")
          .whereLayer("portions")
          .mayOnlyAccessLayers("measure", "heat")
          .whereLayer("ahead")
          .mayOnlyAccessLayers("measure", "heat", "portions")
          .whereLayer("learning")
          .mayOnlyAccessLayers("measure", "log", "rules")
          .whereLayer("forecast")
          .mayOnlyAccessLayers("measure", "log", "rules", "portions");

  @ArchTest
  static final ArchRule rooms_have_no_cycles =
      slices().matching("chillwright.(*)..").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule packages_of_the_core_have_no_cycles =
      slices().matching("chillwright.core.(*)..").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule json_stays_in_web_cli_and_rulebook =
      noClasses()
          .that()
          .resideOutsideOfPackages(WEB, CLI, RULEBOOK)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("com.fasterxml.jackson..", "tools.jackson..");

  @ArchTest
  static final ArchRule sql_stays_in_storage =
      noClasses()
          .that()
          .resideOutsideOfPackage(STORAGE)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "org.jooq..", "org.sqlite..", "java.sql..", "chillwright.storage.schema..");

  @ArchTest
  static final ArchRule http_server_stays_in_web =
      noClasses()
          .that()
          .resideOutsideOfPackage(WEB)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("io.javalin..", "org.eclipse.jetty..", "jakarta.servlet..");

  @ArchTest
  static final ArchRule pdf_stays_in_paper =
      noClasses()
          .that()
          .resideOutsideOfPackage(PAPER)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("org.apache.pdfbox..", "org.apache.fontbox..", "com.google.zxing..");

  private static DescribedPredicate<JavaAccess<?>> asks_a_clock() {
    return describe(
        "asks a clock",
        access -> {
          AccessTarget target = access.getTarget();
          boolean now =
              target.getOwner().getPackageName().startsWith("java.time")
                  && target.getName().equals("now");
          return now
              || CLOCKS
                  .getOrDefault(target.getOwner().getName(), Set.of())
                  .contains(target.getName());
        });
  }
}
