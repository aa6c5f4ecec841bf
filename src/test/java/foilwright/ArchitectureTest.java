package foilwright;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static java.util.stream.Collectors.toCollection;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchRule;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * The one direction of the packages, as lists of what each may use, and what the core may not do.
 */
class ArchitectureTest {
  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(location -> !location.contains(whereTestsLie()))
          .importPackages("foilwright");

  /** Whatever built them: the classes of this test's own place are tests. */
  private static String whereTestsLie() {
    return ArchitectureTest.class.getProtectionDomain().getCodeSource().getLocation().getPath();
  }

  private static final String HIPPARCHUS = "org.hipparchus..";

  /** Packages that calculate: the same in gives the same out, and nothing outside is touched. */
  private static final List<String> CALCULATION =
      List.of(
          "units",
          "geometry",
          "geometry.surface",
          "problem",
          "anatomy",
          "head",
          "hair",
          "fall",
          "pattern",
          "placement",
          "service",
          "service.schedule",
          "service.mix",
          "service.visit",
          "service.marking",
          "look");

  private static final List<String> DRAWING =
      List.of("drawing", "drawing.svg", "drawing.png", "drawing.pdf", "sheet");

  /** What each package may use beside itself and the JDK. */
  private static final Map<String, Set<String>> MAY_USE = mayUse();

  private static Map<String, Set<String>> mayUse() {
    Map<String, Set<String>> table = new LinkedHashMap<>();
    allow(table, "units");
    allow(table, "geometry", "units", HIPPARCHUS);
    allow(table, "geometry.surface", "geometry", "units", HIPPARCHUS);
    allow(table, "problem", "geometry", "units");
    allow(table, "anatomy");
    allow(table, "head", "units", "geometry", "geometry.surface", "problem", "anatomy", HIPPARCHUS);
    allow(table, "hair", "units", "geometry", "geometry.surface", "problem", "anatomy", "head");
    allow(
        table,
        "fall",
        "units",
        "geometry",
        "geometry.surface",
        "problem",
        "anatomy",
        "head",
        "hair",
        HIPPARCHUS);
    allow(table, "pattern", "units", "problem", "anatomy");
    allow(
        table,
        "placement",
        "units",
        "geometry",
        "geometry.surface",
        "problem",
        "anatomy",
        "head",
        "hair",
        "pattern",
        HIPPARCHUS);
    allow(table, "service", "units", "problem", "anatomy", "hair", "placement");
    allow(table, "service.schedule", "service", "units", "problem");
    allow(table, "service.mix", "service", "units", "problem", "anatomy", "hair", "placement");
    allow(table, "service.marking", "service", "units", "anatomy", "placement");
    allow(
        table,
        "service.visit",
        without(CALCULATION, "service.visit", "service.marking", "look", "fall"));
    allow(
        table,
        "look",
        without(
            CALCULATION,
            "look",
            "service",
            "service.schedule",
            "service.mix",
            "service.visit",
            "service.marking"));
    allow(table, "drawing", "geometry", "geometry.surface", "units");
    for (String writer : List.of("svg", "png", "pdf")) {
      allow(table, "drawing." + writer, "drawing", "geometry", "geometry.surface", "units");
    }
    table.get("drawing.pdf").add("org.apache.pdfbox..");
    table.get("drawing.pdf").add("de.rototor.pdfbox..");
    allow(table, "sheet", Stream.concat(CALCULATION.stream(), DRAWING.stream()).toList());
    allow(table, "document", CALCULATION);
    table.get("document").addAll(Set.of("com.fasterxml.jackson..", "biweekly.."));
    allow(table, "app", Stream.concat(CALCULATION.stream(), DRAWING.stream()).toList());
    table.get("app").add("document");
    allow(table, "cli", CALCULATION);
    table.get("cli").addAll(Set.of("app", "web", "picocli.."));
    allow(table, "web", CALCULATION);
    table
        .get("web")
        .addAll(
            Set.of(
                "app",
                "drawing",
                "com.fasterxml.jackson..",
                "io.javalin..",
                "gg.jte..",
                "jakarta..",
                "org.eclipse.jetty.."));
    allow(table, "web.template", "web", "app", "anatomy", "service", "fall");
    table.get("web.template").add("gg.jte..");
    return table;
  }

  private static void allow(Map<String, Set<String>> table, String of, String... used) {
    allow(table, of, List.of(used));
  }

  private static void allow(Map<String, Set<String>> table, String of, List<String> used) {
    table.put(of, new LinkedHashSet<>(used));
  }

  private static List<String> without(List<String> all, String... left) {
    List<String> kept = new ArrayList<>(all);
    kept.removeAll(Arrays.asList(left));
    return kept;
  }

  @TestFactory
  Stream<DynamicTest> eachPackageUsesOnlyItsList() {
    return MAY_USE.entrySet().stream()
        .map(
            entry ->
                DynamicTest.dynamicTest(
                    entry.getKey(), () -> usesOnly(entry.getKey(), entry.getValue())));
  }

  private static void usesOnly(String of, Set<String> allowed) {
    List<String> packages = new ArrayList<>(List.of("java..", "javax..", own(of)));
    for (String name : allowed) {
      packages.add(name.endsWith("..") ? name : own(name));
    }
    classes()
        .that(resideInAPackage(own(of)))
        .should()
        .onlyDependOnClassesThat(
            resideInAnyPackage(packages.toArray(String[]::new))
                .or(DescribedPredicate.describe("are primitive", JavaClass::isPrimitive)))
        .because("the packages have one direction")
        .allowEmptyShould(true)
        .check(CLASSES);
  }

  private static String own(String name) {
    return "foilwright." + name;
  }

  @Test
  void everyPackageStandsInTheTable() {
    Set<String> strangers =
        CLASSES.stream().map(JavaClass::getPackageName).collect(toCollection(TreeSet::new));
    MAY_USE.keySet().forEach(name -> strangers.remove(own(name)));
    assertEquals(Set.of(), strangers);
    assertTrue(CLASSES.size() > 20, "the classes were not found");
  }

  @Test
  void packagesHaveNoCycle() {
    slices().matching("foilwright.(**)").should().beFreeOfCycles().check(CLASSES);
  }

  @Test
  void awtIsForDrawingOnly() {
    noClasses()
        .that(not(resideInAPackage("foilwright.drawing..")))
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("java.awt..", "javax.imageio..")
        .because("a command that draws nothing starts without it")
        .check(CLASSES);
  }

  @Test
  void theCoreReadsNoFileAndWritesNoStream() {
    core(noClasses()
            .that(inCore())
            .should()
            .dependOnClassesThat(
                resideInAPackage("java.nio.file..")
                    .or(
                        DescribedPredicate.describe(
                            "are files",
                            c ->
                                c.getPackageName().equals("java.io")
                                    && (c.getSimpleName().startsWith("File")
                                        || c.getSimpleName().equals("RandomAccessFile")
                                        || c.getSimpleName().equals("Console"))))))
        .check(CLASSES);
    core(noClasses()
            .that(inCore())
            .should()
            .accessField(System.class, "out")
            .orShould()
            .accessField(System.class, "err")
            .orShould()
            .accessField(System.class, "in"))
        .check(CLASSES);
  }

  @Test
  void theCoreHasNoClockNoDefaultLocaleNoUnseededRandom() {
    core(noClasses().that(inCore()).should().callCodeUnitWhere(reachesOutside())).check(CLASSES);
  }

  private static DescribedPredicate<JavaCall<?>> reachesOutside() {
    Set<String> clocks =
        Set.of("currentTimeMillis", "nanoTime", "now", "getenv", "getProperty", "lineSeparator");
    Set<String> takesLocale = Set.of("format", "formatted", "printf", "toLowerCase", "toUpperCase");
    return DescribedPredicate.describe(
        "reads a clock, the default locale, zone or charset, or an unseeded random",
        call -> {
          String owner = call.getTargetOwner().getFullName();
          String name = call.getName();
          List<String> arguments =
              call.getTarget().getRawParameterTypes().stream().map(JavaClass::getFullName).toList();
          if (owner.equals("java.lang.System") || owner.startsWith("java.time.")) {
            return clocks.contains(name) || name.startsWith("system");
          }
          if (owner.equals("java.lang.String") && takesLocale.contains(name)) {
            return !arguments.contains("java.util.Locale");
          }
          if (owner.equals("java.lang.String")
              && (name.equals("getBytes") || name.equals("<init>"))) {
            boolean bytes = name.equals("getBytes") || arguments.contains("[B");
            return bytes && !arguments.contains("java.nio.charset.Charset");
          }
          if (owner.equals("java.util.Random") || owner.equals("java.util.SplittableRandom")) {
            return name.equals("<init>") && arguments.isEmpty();
          }
          return owner.equals("java.util.concurrent.ThreadLocalRandom")
              || owner.equals("java.security.SecureRandom")
              || (owner.equals("java.lang.Math") && name.equals("random"))
              || (owner.equals("java.util.UUID") && name.equals("randomUUID"))
              || (owner.equals("java.util.Locale") && name.equals("getDefault"))
              || (owner.equals("java.util.TimeZone") && name.equals("getDefault"))
              || (owner.equals("java.nio.charset.Charset") && name.equals("defaultCharset"));
        });
  }

  /**
   * Whatever the core hands out cannot change, and it keeps no state of its own; the scratch space
   * of one calculation lives in classes that are not public.
   */
  @Test
  void fieldsOfTheCoreAreFinal() {
    core(fields()
            .that()
            .areDeclaredInClassesThat(inCore())
            .and()
            .areDeclaredInClassesThat()
            .arePublic()
            .should()
            .beFinal())
        .check(CLASSES);
    core(fields().that().areDeclaredInClassesThat(inCore()).and().areStatic().should().beFinal())
        .check(CLASSES);
  }

  private static ArchRule core(ArchRule rule) {
    return rule.because("the core gives the same out for the same in").allowEmptyShould(false);
  }

  private static DescribedPredicate<JavaClass> inCore() {
    return resideInAnyPackage(
            Stream.concat(CALCULATION.stream(), DRAWING.stream())
                .map(ArchitectureTest::own)
                .toArray(String[]::new))
        .as("of the core");
  }
}
