package chillwright.print;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.cases.Case;
import chillwright.cases.CaseKitchen;
import chillwright.cases.CaseKitchen.Judged;
import chillwright.core.log.Category;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Finding;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Findings and dates in Spanish. The limits are those of 16 Del. Admin. Code 3-501.14(A),
 * 3-501.16(A) and 3-501.18(A); the Spanish is our own, no source.
 */
class SpanishTest {
  private static final Path RESOURCES =
      Path.of(System.getProperty("basedir", System.getProperty("user.dir")))
          .resolve("src/test/resources");

  /** English that no Spanish text holds. */
  private static final Pattern ENGLISH =
      Pattern.compile(
          "\\b(the|was|by|left|not|or|at|it|is|of|to|in|until|within|and|than|days|day|discard"
              + "|reheat|frozen|freeze|soft|hard|reading|record|limit|limits|below|above)\\b",
          Pattern.CASE_INSENSITIVE);

  /** Words of a local rule set that have no translation, and citations. */
  private static final Pattern NOT_OURS = Pattern.compile("«[^»]*»|\\[[^\\]]*]");

  @Test
  void no_english_is_left_in_what_is_said_of_any_case() throws IOException {
    Set<String> said = new TreeSet<>();
    try (Stream<Path> files = Files.list(RESOURCES.resolve("cases"))) {
      for (Path file : files.filter(f -> f.toString().endsWith(".yaml")).toList()) {
        for (Case example : Case.of(file)) {
          for (Judged judged : CaseKitchen.of(example, RESOURCES).outcome().lots().values()) {
            said.addAll(said(example, judged));
          }
        }
      }
    }
    assertThat(said).hasSizeGreaterThan(500);
    assertThat(said)
        .filteredOn(text -> ENGLISH.matcher(NOT_OURS.matcher(text).replaceAll("")).find())
        .isEmpty();
  }

  /** What is said of a lot before and after each of its moments. */
  private static Set<String> said(Case example, Judged judged) {
    Set<Instant> moments = new TreeSet<>(Set.of(example.at()));
    for (Finding finding : judged.findings()) {
      Stream.concat(Stream.of(finding.opensAt(), finding.settlesAt()), finding.deadline().stream())
          .forEach(
              moment ->
                  DoubleStream.of(-0.3, 0, 1.1, 48, 5000)
                      .mapToObj(hours -> Duration.ofSeconds(Math.round(hours * 3600)))
                      .forEach(away -> moments.add(moment.plus(away))));
    }
    Set<String> said = new TreeSet<>();
    for (Instant now : moments) {
      Sentences sentences = new Sentences(example.zone(), Scale.FAHRENHEIT, now, Language.SPANISH);
      judged.findings().forEach(finding -> said.add(sentences.says(finding)));
      judged
          .findings()
          .forEach(finding -> said.add(Figures.limitInBoth(finding.rule(), Language.SPANISH)));
      said.addAll(
          new KeepText(
                  judged.timeline().food().category(),
                  judged.keeping(),
                  example.zone(),
                  now,
                  Language.SPANISH)
              .says());
    }
    return said;
  }

  /**
   * What is said of a soup that was hot at noon of 2 March 2026.
   *
   * @param at day and time of that month, such as "02T13:40"
   * @param rows the same, then word and temperature
   */
  private static List<String> soup(String at, String... rows) {
    StringBuilder log = new StringBuilder("lot,food,category,when,entry,temperature\n");
    log.append("A,Soup,soup_or_stew,2026-03-02T12:00:00Z,cooked,180F\n");
    for (String row : rows) {
      log.append("A,,,2026-03-").append(row.replaceFirst(",", ":00Z,")).append('\n');
    }
    Instant now = Instant.parse("2026-03-" + at + ":00Z");
    Case example =
        new Case(
            "soup",
            "our own",
            "us-food-code-2022",
            Optional.empty(),
            ZoneOffset.UTC,
            now,
            Duration.ZERO,
            log.toString(),
            List.of(),
            List.of());
    CaseKitchen.Outcome outcome = CaseKitchen.of(example, RESOURCES).outcome();
    assertThat(outcome.problems()).isEmpty();
    Judged judged = outcome.lots().values().iterator().next();
    Sentences sentences = new Sentences(ZoneOffset.UTC, Scale.FAHRENHEIT, now, Language.SPANISH);
    List<String> said = new ArrayList<>();
    judged.findings().forEach(finding -> said.add(sentences.says(finding)));
    Category category = judged.timeline().food().category();
    said.addAll(
        new KeepText(category, judged.keeping(), ZoneOffset.UTC, now, Language.SPANISH).says());
    return said;
  }

  @Test
  void a_cooling_that_runs() {
    assertThat(soup("02T13:40", "02T12:05,reading,130F"))
        .contains(
            "70 °F a más tardar a las 14:00 (dentro de 20 min).",
            "41 °F a más tardar a las 18:00 (dentro de 4 h 20 min).",
            "Use o deseche a más tardar al final del dom 8 mar");
  }

  @Test
  void a_missed_limit_and_what_to_do() {
    assertThat(soup("02T14:10", "02T12:05,reading,130F", "02T14:05,reading,90F"))
        .contains(
            "Aún 90 °F a las 14:05: debía llegar a 70 °F a más tardar a las 14:00. Desechar, o"
                + " recalentar a 165 °F y empezar de nuevo si su autoridad lo permite (a más tardar"
                + " a las 18:00).");
  }

  @Test
  void a_reading_that_nobody_took() {
    assertThat(soup("02T15:00", "02T13:00,reading,120F"))
        .contains(
            "Falta una lectura: nada muestra 70 °F a más tardar a las 14:00 (última lectura: 120 °F"
                + " a las 13:00). Tómela ahora y anótela. Si no se cumplió el límite: Desechar, o"
                + " recalentar a 165 °F y empezar de nuevo si su autoridad lo permite (a más tardar"
                + " a las 18:00).");
  }

  @Test
  void a_limit_that_was_met() {
    assertThat(soup("02T13:40", "02T13:30,reading,68F"))
        .contains("Llegó a 70 °F en 1 h 30 min como máximo.");
  }

  @Test
  void the_hour_of_one_is_singular() {
    assertThat(soup("03T01:10", "02T13:00,reading,68F", "03T01:05,reading,50F"))
        .anyMatch(text -> text.contains("50 °F a la 01:05"))
        .anyMatch(text -> text.contains("el lun 2 mar a las 18:00"));
  }

  @Test
  void food_held_hot() {
    assertThat(soup("02T19:00", "02T12:10,hot-holding,150F", "02T13:00,reading,140F"))
        .contains(
            "135 °F o más en cada lectura; mayor tiempo entre una revisión y otra: 50 min; última"
                + " lectura hace 6 h.");
  }

  @Test
  void food_that_was_frozen_on_its_first_of_seven_days() {
    assertThat(soup("02T16:00", "02T13:00,chilled,40F", "02T15:00,frozen,10F"))
        .contains(
            "Congelado, 10 °F a las 15:00.",
            "Se congeló con días restantes; la cuenta está detenida.",
            "Una vez descongelado: úselo en 6 días, contando el día en que se descongela");
  }
}
