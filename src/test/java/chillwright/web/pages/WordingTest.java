package chillwright.web.pages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chillwright.core.keeping.StillGood;
import chillwright.core.kitchen.Allergen;
import chillwright.core.kitchen.KnownPlace.Kind;
import chillwright.core.kitchen.KnownProbe.Scales;
import chillwright.core.kitchen.ProbeCheck.Method;
import chillwright.core.log.HandOut;
import chillwright.core.log.How;
import chillwright.core.log.Phase;
import chillwright.core.log.PutBack;
import chillwright.core.log.Word;
import chillwright.core.plan.Dish.Route;
import chillwright.core.rules.Verdict;
import chillwright.paper.Sheet;
import chillwright.print.Language;
import chillwright.service.ahead.Question;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The texts of the pages: each in every language, each used, and none missing. */
class WordingTest {
  private static final Pattern SAID = Pattern.compile("\\bsay\\(\\s*\"([a-z0-9.-]+)\"\\s*[,)]");
  private static final Pattern QUOTED = Pattern.compile("\"([a-z0-9-]+(?:\\.[a-z0-9-]+)+)\"");
  private static final Pattern FILLED = Pattern.compile("\\{\\d+}");

  private static Set<String> keys(Language language) {
    String ending = "." + language.tag();
    return Wording.keys().stream()
        .filter(key -> key.endsWith(ending))
        .map(key -> key.substring(0, key.length() - ending.length()))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static Set<String> found(Pattern pattern, String... roots) throws IOException {
    Set<String> found = new TreeSet<>();
    for (String root : roots) {
      try (Stream<Path> files = Files.walk(Path.of("src/main", root))) {
        for (Path file : files.filter(Files::isRegularFile).toList()) {
          pattern.matcher(Files.readString(file)).results().forEach(m -> found.add(m.group(1)));
        }
      }
    }
    return found;
  }

  /** Keys put together from a prefix and what the core calls a thing. */
  private static Set<String> composed() {
    Stream<String> words =
        Stream.concat(
                Arrays.stream(Word.values()).map(Word::text),
                Arrays.stream(Phase.values()).map(Phase::word))
            .distinct()
            .map(word -> "word." + word);
    Stream<String> outs =
        Arrays.stream(HandOut.Kind.values()).map(kind -> "trace.kind." + kind.key());
    Stream<String> hows = Arrays.stream(How.values()).map(how -> "how." + how.text());
    Stream<String> verdicts =
        Stream.concat(Arrays.stream(Verdict.values()).map(Verdict::text), Stream.of("none"))
            .map(verdict -> "verdict." + verdict);
    Stream<String> sheets = Sheet.ALL.stream().map(sheet -> "sheet." + sheet.key());
    Stream<String> kinds = Arrays.stream(Kind.values()).map(kind -> "kind." + kind.key());
    Stream<String> allergens = Arrays.stream(Allergen.values()).map(a -> "allergen." + a.key());
    Stream<String> questions =
        Arrays.stream(Question.values())
            .flatMap(
                question ->
                    Stream.concat(
                        Stream.of("ahead." + question.key()),
                        question.parameters().stream()
                            .map(field -> "ahead." + question.key() + "." + field.name())));
    Stream<String> scales = Arrays.stream(Scales.values()).map(of -> "scales." + of.key());
    Stream<String> methods = Arrays.stream(Method.values()).map(how -> "check." + how.key());
    Stream<String> plans =
        Stream.of(
                PlanFaults.keys(),
                PlanViews.keys(),
                PlanTree.DAYS.stream().map(day -> "plans.day." + day).toList(),
                Arrays.stream(Route.values()).map(of -> "plans.route." + of.text()).toList())
            .flatMap(List::stream);
    Stream<String> choices =
        Stream.concat(
                AheadPage.APPLIANCES.stream(),
                Arrays.stream(Question.values())
                    .flatMap(question -> question.parameters().stream())
                    .filter(parameter -> parameter.label().contains("|"))
                    .flatMap(parameter -> Stream.of(parameter.label().split("[|]", -1))))
            .map(choice -> "ahead.choice." + choice);
    Stream<String> faults = AheadPage.FAULTS.stream().map(fault -> "ahead.fault." + fault);
    Stream<String> leftOut =
        Arrays.stream(StillGood.Why.values()).map(why -> "lots.left-out." + why.key());
    Stream<String> notBack =
        Arrays.stream(PutBack.Refusal.values()).map(why -> "share.back.not." + why.key());
    return Stream.of(
            choices, faults, words, hows, verdicts, sheets, kinds, allergens, scales, methods,
            questions, plans, outs, leftOut, notBack)
        .flatMap(keys -> keys)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  @Test
  void every_key_is_there_in_every_language() {
    assertThat(keys(Language.ENGLISH)).isNotEmpty().isEqualTo(keys(Language.SPANISH));
    assertThat(Wording.keys())
        .hasSize(keys(Language.ENGLISH).size() + keys(Language.SPANISH).size());
  }

  @Test
  void every_language_fills_in_the_same() {
    for (String key : keys(Language.ENGLISH)) {
      assertThat(filled(Wording.text(Language.SPANISH, key)))
          .as(key)
          .isEqualTo(filled(Wording.text(Language.ENGLISH, key)));
    }
  }

  private static Set<String> filled(String text) {
    return FILLED.matcher(text).results().map(m -> m.group()).collect(Collectors.toSet());
  }

  @ParameterizedTest
  @EnumSource(Language.class)
  void no_text_is_blank_or_has_a_stray_space(Language language) {
    for (String key : keys(language)) {
      assertThat(Wording.text(language, key)).as(key).isNotBlank().isEqualTo(text(language, key));
    }
  }

  private static String text(Language language, String key) {
    return Wording.text(language, key).strip();
  }

  @Test
  void every_key_that_is_said_is_there() throws IOException {
    assertThat(keys(Language.ENGLISH))
        .containsAll(found(SAID, "jte", "java/chillwright/web", "java/chillwright/paper"))
        .containsAll(composed());
  }

  @Test
  void every_key_that_is_there_is_said() throws IOException {
    Set<String> unused = keys(Language.ENGLISH);
    unused.removeAll(found(QUOTED, "jte", "java"));
    unused.removeAll(composed());
    assertThat(unused).isEmpty();
  }

  @Test
  void a_key_that_is_not_there_is_a_fault() {
    assertThatThrownBy(() -> Wording.text(Language.ENGLISH, "no.such-key"))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("no.such-key");
  }
}
