package chillwright.core.log;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds for any log: however it comes in, the same entries come of it, and each once. */
class IntakePropertyTest {
  private static final String HEADER =
      "lot,food,category,when,entry,temperature,portions,from,id,corrects\n";
  private static final Instant START = Instant.parse("2026-03-01T06:00:00Z");
  private static final List<String> WORDS =
      List.of("reading", "cooling", "chilled", "hot-holding", "action", "portions", "served");

  static IntStream seeds() {
    return IntStream.range(0, 200);
  }

  /** A log without faults: lots one after the other, each row a minute later. */
  private static List<String> log(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    List<String> rows = new ArrayList<>();
    int minute = 0;
    for (int lot = 0; lot < 5; lot++) {
      String from = lot > 0 && random.nextBoolean() ? "L" + random.nextInt(lot) : "";
      rows.add(
          "L%d,%s,%s,cooked,185F,100,%s,%s,"
              .formatted(
                  lot,
                  from.isEmpty() ? "Soup,soup_or_stew" : ",",
                  START.plusSeconds(60L * minute++),
                  from,
                  random.nextBoolean() ? "first" + lot : ""));
      for (int i = random.nextInt(6); i > 0; i--) {
        rows.add(later(random, lot, rows.size(), START.plusSeconds(60L * minute++)));
      }
    }
    return rows;
  }

  private static String later(SplittableRandom random, int lot, int number, Instant when) {
    String word = WORDS.get(random.nextInt(WORDS.size()));
    boolean takes = word.equals("portions") || word.equals("served");
    String id = random.nextBoolean() ? "r" + number : "";
    return "L%d,,,%s,%s,%dF,%s,,%s,".formatted(lot, when, word, number, takes ? "3" : "", id);
  }

  private static List<Incoming> rows(List<String> rows) {
    return IntakeBench.rows("log.csv", HEADER + String.join("\n", rows) + "\n");
  }

  /** What is stored of each lot, apart from made ids. */
  private static Map<LotId, Set<Content>> contents(IntakeBench bench) {
    return bench.lots().entrySet().stream()
        .collect(
            Collectors.toMap(
                Map.Entry::getKey,
                lot ->
                    lot.getValue().entries().stream()
                        .map(Content::of)
                        .collect(Collectors.toSet())));
  }

  private static int count(IntakeBench bench) {
    return bench.lots().values().stream().mapToInt(log -> log.entries().size()).sum();
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void a_log_taken_in_as_it_grows_gives_what_the_whole_gives(int seed) {
    List<String> log = log(seed);
    IntakeBench whole = new IntakeBench();
    whole.keep(rows(log));
    IntakeBench grown = new IntakeBench();
    SplittableRandom random = new SplittableRandom(seed);
    for (int end = 0; end < log.size(); end = Math.min(log.size(), end + random.nextInt(1, 7))) {
      grown.keep(rows(log.subList(0, end)));
    }
    Admission last = grown.keep(rows(log));
    assertThat(contents(grown)).isEqualTo(contents(whole));
    assertThat(count(grown)).isEqualTo(log.size());
    assertThat(last.ids()).hasSize(log.size()).allMatch(id -> id.isPresent());
    Admission again = grown.keep(rows(log));
    assertThat(again.repeats()).isEqualTo(log.size());
    assertThat(again.lots()).isEmpty();
    assertThat(again.ids()).isEqualTo(last.ids());
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void the_order_of_the_rows_does_not_matter(int seed) {
    List<String> log = log(seed);
    IntakeBench sorted = new IntakeBench();
    sorted.keep(rows(log));
    List<String> mixed = new ArrayList<>(log);
    Collections.shuffle(mixed, new Random(seed));
    IntakeBench shuffled = new IntakeBench();
    Admission admission = shuffled.keep(rows(mixed));
    assertThat(contents(shuffled)).isEqualTo(contents(sorted));
    Set<LotId> seen = new HashSet<>();
    for (Admission.Lot lot : admission.lots()) {
      assertThat(lot.log().sources()).allMatch(source -> seen.contains(source.lot()));
      assertThat(lot.log().entries().get(0).word()).isEqualTo(Word.COOKED);
      seen.add(lot.log().lot());
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void every_entry_has_an_id_of_its_own_and_every_lot_a_timeline(int seed) {
    IntakeBench bench = new IntakeBench();
    Admission admission = bench.keep(rows(log(seed)));
    assertThat(admission.ids()).doesNotHaveDuplicates();
    for (Admission.Lot lot : admission.lots()) {
      Timeline timeline =
          Timeline.of(lot.log(), IntakeBench.KEEPING, IntakeBench.ZONE, IntakeBench.WRITTEN)
              .orElseThrow();
      assertThat(timeline.food().name()).isEqualTo("Soup");
      assertThat(timeline.portions().left().orElse(0)).isNotNegative();
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void a_fault_in_one_row_takes_away_its_lot_and_what_came_from_it_and_nothing_else(int seed) {
    List<String> log = log(seed);
    SplittableRandom random = new SplittableRandom(seed);
    int broken = random.nextInt(log.size());
    List<String> spoilt = new ArrayList<>(log);
    spoilt.set(broken, log.get(broken).replaceFirst("F,", "K,"));
    LotId bad = new LotId(log.get(broken).substring(0, 2));
    IntakeBench bench = new IntakeBench();
    bench.keep(rows(log));
    Set<LotId> lost =
        bench.lots().values().stream()
            .filter(lot -> comesFrom(lot, bad))
            .map(LotLog::lot)
            .collect(Collectors.toSet());
    Admission admission = new IntakeBench().admit(rows(spoilt));
    assertThat(admission.problems()).extracting(Problem::code).containsExactly("bad-temperature");
    Set<LotId> good = new HashSet<>(bench.lots().keySet());
    good.removeAll(lost);
    assertThat(admission.lots())
        .extracting(lot -> lot.log().lot())
        .containsExactlyInAnyOrderElementsOf(good);
  }

  private static boolean comesFrom(LotLog log, LotId lot) {
    return log.lot().equals(lot)
        || log.sources().stream().anyMatch(source -> comesFrom(source, lot));
  }
}
