package chillwright.storage;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.kitchen.Allergen;
import chillwright.core.kitchen.AllergensSaid;
import chillwright.core.kitchen.KnownFood;
import chillwright.core.kitchen.KnownPlace;
import chillwright.core.kitchen.Person;
import chillwright.core.measure.Temperature;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;
import java.util.function.Function;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a kitchen says of itself, on a real file. */
class SetUpStoreTest {
  private static final Instant NOW = Instant.parse("2026-03-02T12:00:00Z");

  @TempDir private Path folder;
  private Database database;

  @BeforeEach
  void open() {
    database = Database.open(folder.resolve("kitchen.db"));
  }

  @AfterEach
  void close() {
    database.close();
  }

  private void write(Consumer<SetUpStore> work) {
    database.write(
        session -> {
          work.accept(session.setUp());
          return session;
        });
  }

  private <T> T read(Function<SetUpStore, T> question) {
    return database.read(session -> question.apply(session.setUp()));
  }

  private Optional<KnownFood> named(String name) {
    return read(store -> store.food(name));
  }

  private static KnownFood full(String name) {
    return new KnownFood(
        name,
        "soup_or_stew",
        OptionalInt.of(24),
        Optional.of("2-inch pan"),
        Optional.of("Walk-in"),
        Optional.of("to 165 °F"),
        Optional.of("in the refrigerator"),
        OptionalInt.of(4),
        List.of(Allergen.WHEAT, Allergen.MILK),
        Optional.of("celery"),
        Optional.of("barley,\nmilk"));
  }

  private static KnownFood bare(String name) {
    return new KnownFood(
        name,
        "soup_or_stew",
        OptionalInt.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        OptionalInt.empty(),
        List.of(),
        Optional.empty(),
        Optional.empty());
  }

  @Test
  void a_food_comes_back_as_it_was_said() {
    write(store -> store.save(full("Soup"), NOW));
    write(store -> store.save(bare("Beans"), NOW));
    assertThat(read(SetUpStore::foods)).containsExactly(bare("Beans"), full("Soup"));
    assertThat(named("Soup")).contains(full("Soup"));
    assertThat(named("soup")).isEmpty();
  }

  @Test
  void the_last_word_on_a_food_stands_as_a_whole() {
    write(store -> store.save(full("Soup"), NOW));
    write(store -> store.save(bare("Soup"), NOW.plusSeconds(1)));
    assertThat(read(SetUpStore::foods)).containsExactly(bare("Soup"));
  }

  /** Our own design, no source: what a label named at a time has to be known long after. */
  @Test
  void what_was_said_of_allergens_is_kept_each_time_it_changed() {
    write(store -> store.save(bare("Soup"), NOW));
    write(store -> store.save(bare("Soup"), NOW.plusSeconds(1)));
    write(store -> store.save(full("Soup"), NOW.plusSeconds(2)));
    write(store -> store.save(full("Beans"), NOW.plusSeconds(2)));
    write(store -> store.save(full("Soup"), NOW.plusSeconds(3)));
    write(store -> store.save(bare("Soup"), NOW.plusSeconds(4)));
    AllergensSaid named =
        new AllergensSaid(
            NOW.plusSeconds(2),
            List.of(Allergen.MILK, Allergen.WHEAT),
            Optional.of("celery"),
            true);
    AllergensSaid before = new AllergensSaid(NOW, List.of(), Optional.empty(), true);
    AllergensSaid after = new AllergensSaid(NOW.plusSeconds(4), List.of(), Optional.empty(), true);
    assertThat(read(SetUpStore::allergensSaid))
        .containsOnly(
            Map.entry("Beans", List.of(named)), Map.entry("Soup", List.of(before, named, after)));
  }

  @Test
  void every_kind_of_place_comes_back_with_its_figure_in_the_scale_it_was_given() {
    List<KnownPlace> places =
        Arrays.stream(KnownPlace.Kind.values())
            .map(
                kind ->
                    new KnownPlace(
                        kind.key(),
                        kind,
                        kind.hasLimit() ? Optional.of(Temperature.celsius(3.5)) : Optional.empty(),
                        kind.key().length()))
            .toList();
    places.forEach(place -> write(store -> store.save(place, NOW)));
    assertThat(read(SetUpStore::places)).containsExactlyInAnyOrderElementsOf(places);
  }

  @Test
  void people_come_back_by_their_initials() {
    write(store -> store.save(new Person("RO", Optional.of("Rosa")), NOW));
    write(store -> store.save(new Person("AB", Optional.empty()), NOW));
    write(store -> store.save(new Person("RO", Optional.empty()), NOW));
    assertThat(read(SetUpStore::people))
        .containsExactly(new Person("AB", Optional.empty()), new Person("RO", Optional.empty()));
  }
}
