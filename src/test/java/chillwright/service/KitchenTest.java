package chillwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chillwright.rulebook.RuleLibrary;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Opening a kitchen: what is stored of it at first, and what is refused later. */
class KitchenTest {
  private static final ZoneId CHICAGO = ZoneId.of("America/Chicago");
  private static final ZoneId UTC = ZoneId.of("UTC");

  @TempDir private Path folder;
  private Path file;

  @BeforeEach
  void name_the_file() {
    file = folder.resolve("kitchen.db");
  }

  @Test
  void a_new_kitchen_keeps_its_zone_and_rule_set() {
    try (Kitchen kitchen = open(Optional.of(CHICAGO), Optional.of("us-home"))) {
      assertThat(kitchen.settings().zone()).isEqualTo(CHICAGO);
      assertThat(kitchen.settings().ruleBook().id()).isEqualTo("us-home");
    }
    try (Kitchen kitchen = open(Optional.empty(), Optional.empty())) {
      assertThat(kitchen.settings().zone()).isEqualTo(CHICAGO);
      assertThat(kitchen.settings().ruleBook().id()).isEqualTo("us-home");
      assertThat(kitchen.settings().olderVersion()).isEmpty();
    }
    open(Optional.of(CHICAGO), Optional.of("us-home")).close();
  }

  @Test
  void a_new_kitchen_takes_the_systems_zone_and_the_food_code() {
    try (Kitchen kitchen = open(Optional.empty(), Optional.empty())) {
      assertThat(kitchen.settings().zone()).isEqualTo(UTC);
      assertThat(kitchen.settings().ruleBook().id()).isEqualTo("us-food-code-2022");
    }
  }

  @Test
  void another_zone_is_refused_with_what_to_do() {
    open(Optional.of(CHICAGO), Optional.empty()).close();
    assertThatThrownBy(() -> open(Optional.of(UTC), Optional.empty()))
        .isInstanceOf(NotOpened.class)
        .hasMessageContaining("zone America/Chicago, not UTC")
        .hasMessageContaining("Leave --zone out");
    // Nothing holds the file after a refusal.
    open(Optional.empty(), Optional.empty()).close();
  }

  @Test
  void another_rule_set_is_refused_with_what_to_do() {
    open(Optional.of(CHICAGO), Optional.empty()).close();
    assertThatThrownBy(() -> open(Optional.empty(), Optional.of("us-home")))
        .isInstanceOf(NotOpened.class)
        .hasMessageContaining("rule set us-food-code-2022, not us-home")
        .hasMessageContaining("Leave --rule-set out");
  }

  @Test
  void a_rule_set_that_is_not_there_is_refused_and_makes_no_kitchen() {
    assertThatThrownBy(() -> open(Optional.empty(), Optional.of("us-moon")))
        .isInstanceOf(NotOpened.class)
        .hasMessageContaining("no rule set us-moon")
        .hasMessageContaining("us-food-code-2022")
        .hasMessageContaining("--rules");
    open(Optional.empty(), Optional.of("us-home")).close();
  }

  @Test
  void a_kitchen_in_use_is_refused() {
    try (Kitchen first = open(Optional.empty(), Optional.empty())) {
      assertThat(first.settings().name()).isEmpty();
      assertThatThrownBy(() -> open(Optional.empty(), Optional.empty()))
          .isInstanceOf(NotOpened.class)
          .hasMessageContaining("Another program is using");
    }
  }

  @Test
  void lots_of_a_category_that_is_gone_are_named_at_the_start() throws Exception {
    try (TestKitchen kitchen = new TestKitchen(file)) {
      kitchen.log(
          "lot,food,category,when,entry\nA,Soup,soup_or_stew,2026-03-02T16:00:00Z,cooked\n");
    }
    TamperedFile.run(file, "INSERT INTO category_used VALUES ('moon_cheese')");
    assertThatThrownBy(() -> open(Optional.empty(), Optional.empty()))
        .isInstanceOf(NotOpened.class)
        .hasMessageContaining("moon_cheese")
        .hasMessageContaining("--rules");
  }

  @Test
  void a_newer_version_of_the_figures_is_told_until_all_is_recomputed() throws Exception {
    try (TestKitchen kitchen = new TestKitchen(file)) {
      kitchen.log(
          "lot,food,category,when,entry\nA,Soup,soup_or_stew,2026-03-02T16:00:00Z,cooked\n");
    }
    TamperedFile.run(file, "UPDATE kitchen SET rules_version = 'old'");
    TamperedFile.run(file, "UPDATE lot SET rule_set_version = 'old'");
    TamperedFile.run(file, "UPDATE finding SET rule = 'cooling.gone' WHERE seq = 1");
    try (TestKitchen kitchen = new TestKitchen(file)) {
      assertThat(kitchen.kitchen().settings().olderVersion()).contains("old");
      // A rule that is gone can still be shown, and says what to do.
      assertThat(kitchen.lot("A").judged().orElseThrow().findings().get(0).rule().says())
          .contains("recompute");
      assertThat(kitchen.kitchen().logbook().recompute(Progress.NONE).changedRows()).isPositive();
      assertThat(kitchen.kitchen().settings().olderVersion()).isEmpty();
      assertThat(kitchen.lot("A").judged().orElseThrow().findings())
          .noneMatch(finding -> finding.rule().id().equals("cooling.gone"));
    }
  }

  @Test
  void an_access_key_is_made_once_and_kept_as_a_hash_only() throws Exception {
    String key;
    try (Kitchen kitchen = open(Optional.empty(), Optional.empty())) {
      key = kitchen.accessKeys().makeFirst().orElseThrow();
      assertThat(key).hasSizeGreaterThan(40);
      assertThat(kitchen.accessKeys().makeFirst()).isEmpty();
      assertThat(kitchen.accessKeys().isKey(key)).isTrue();
      assertThat(kitchen.accessKeys().isKey(key.substring(1))).isFalse();
      assertThat(kitchen.accessKeys().isKey("")).isFalse();
    }
    assertThat(new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1))
        .doesNotContain(key);
    try (Kitchen kitchen = open(Optional.empty(), Optional.empty())) {
      assertThat(kitchen.accessKeys().makeFirst()).isEmpty();
      assertThat(kitchen.accessKeys().isKey(key)).isTrue();
    }
  }

  @Test
  void the_revision_changes_with_every_write_and_every_opening() {
    String first;
    try (TestKitchen kitchen = new TestKitchen(file)) {
      first = kitchen.kitchen().revision();
      assertThat(kitchen.kitchen().revision()).isEqualTo(first);
      kitchen.log(
          "lot,food,category,when,entry\nA,Soup,soup_or_stew,2026-03-02T16:00:00Z,cooked\n");
      assertThat(kitchen.kitchen().revision()).isNotEqualTo(first);
      kitchen.reopen();
      assertThat(kitchen.kitchen().revision()).isNotEqualTo(first);
    }
  }

  private Kitchen open(Optional<ZoneId> zone, Optional<String> ruleSet) {
    RuleLibrary library = TestKitchen.LIBRARY;
    return Kitchen.open(
        new Opening(
            file, zone, ruleSet, UTC, library, () -> Instant.parse("2026-03-02T18:00:00Z")));
  }
}
