package chillwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chillwright.core.keeping.LotOrder;
import chillwright.core.keeping.LotState;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Phase;
import chillwright.core.log.Word;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Remark;
import chillwright.core.rules.Shape;
import chillwright.core.rules.Verdict;
import chillwright.service.Reports.Due;
import chillwright.service.Reports.Trouble;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Lists over a made-up history: each must hold what a look at every single lot gives, in its order,
 * whole and without repeats however it is cut into pages.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ListsTest {
  private static final Instant START = Instant.parse("2026-03-02T06:00:00Z");
  private static final Instant END = Instant.parse("2026-03-12T06:00:00Z");

  @TempDir private static Path folder;
  private TestKitchen kitchen;
  private List<LotView> all;

  @BeforeAll
  void write_a_history() {
    kitchen = new TestKitchen(folder.resolve("kitchen.db"));
    kitchen.at(END.toString());
    RandomLog random = new RandomLog(7, START, END);
    for (int i = 0; i < 120; i++) {
      try {
        kitchen.log(random.next());
      } catch (Refused refused) {
        assertThat(refused.problems()).isNotEmpty();
      }
    }
    kitchen.log(
        """
        lot,food,category,when,entry,temperature
        gone,Soup,soup_or_stew,2026-03-11T03:00:00Z,cooked,160F
        gone,,,2026-03-11T03:10:00Z,reading,130F
        gone,,,2026-03-11T06:00:00Z,reading,80F
        gone,,,2026-03-11T06:10:00Z,served,
        fresh,Soup,soup_or_stew,2026-03-12T05:50:00Z,cooked,160F
        fine,Soup,soup_or_stew,2026-03-12T03:00:00Z,cooked,160F
        fine,,,2026-03-12T04:30:00Z,reading,69F
        fine,,,2026-03-12T05:00:00Z,reading,40F
        """);
    all = everyLot();
  }

  @AfterAll
  void close() {
    kitchen.close();
  }

  private List<LotView> everyLot() {
    List<LotView> views = new ArrayList<>();
    for (LotState state : pages(page -> kitchen.kitchen().lots().list(LotQuery.ALL, page), 50)) {
      views.add(kitchen.lot(state.lot().text()));
    }
    return views;
  }

  /** Follows a list to its end, so many items a page. */
  private static <T> List<T> pages(Function<Page.Wanted, Page<T>> list, int limit) {
    List<T> items = new ArrayList<>();
    Optional<String> cursor = Optional.empty();
    do {
      Page<T> page = list.apply(new Page.Wanted(limit, cursor));
      assertThat(page.items()).hasSizeLessThanOrEqualTo(limit);
      items.addAll(page.items());
      cursor = page.next();
    } while (cursor.isPresent());
    return items;
  }

  private List<LotId> those(Predicate<LotView> wanted) {
    return all.stream().filter(wanted).map(view -> view.state().lot()).toList();
  }

  private static Optional<Verdict> verdict(LotView view, Instant now) {
    return view.judged().orElseThrow().findings().stream()
        .map(finding -> finding.at(now))
        .min(Comparator.naturalOrder());
  }

  private List<LotId> listed(LotQuery query, int limit) {
    return pages(page -> kitchen.kitchen().lots().list(query, page), limit).stream()
        .map(LotState::lot)
        .toList();
  }

  @Test
  void there_is_enough_to_list() {
    assertThat(all).hasSizeGreaterThan(20);
    assertThat(those(view -> view.state().isOnHand())).hasSizeGreaterThan(10);
    assertThat(those(view -> !view.state().isOnHand())).isNotEmpty();
  }

  @ParameterizedTest(name = "pages of {0}")
  @ValueSource(ints = {1, 3, 200})
  void all_lots_come_once_the_newest_first(int limit) {
    List<LotId> listed = listed(LotQuery.ALL, limit);
    assertThat(listed).isEqualTo(those(view -> true)).doesNotHaveDuplicates();
    assertThat(listed.subList(0, 2)).containsExactly(new LotId("fine"), new LotId("fresh"));
  }

  @ParameterizedTest(name = "{0}")
  @EnumSource(Verdict.class)
  void a_verdict_lists_the_lots_on_hand_that_have_it_now(Verdict verdict) {
    LotQuery query = LotQuery.ALL.with(verdict);
    for (String moment :
        List.of("2026-03-12T06:00:00Z", "2026-03-12T08:00:00Z", "2026-04-01T00:00:00Z")) {
      kitchen.at(moment);
      Instant now = kitchen.now();
      List<LotId> expected =
          those(v -> v.state().isOnHand() && verdict(v, now).filter(verdict::equals).isPresent());
      for (int limit : List.of(1, 4, 200)) {
        assertThat(listed(query, limit))
            .as("%s at %s, %d a page", verdict, moment, limit)
            .containsExactlyInAnyOrderElementsOf(expected);
      }
      // What the state itself says of its verdict is the same.
      assertThat(all)
          .allSatisfy(
              v ->
                  assertThat(v.state().standing().orElseThrow().verdicts().at(now))
                      .isEqualTo(verdict(v, now)));
    }
    kitchen.at(END.toString());
  }

  @ParameterizedTest(name = "{0}")
  @EnumSource(Phase.class)
  void a_phase_lists_the_lots_in_it(Phase phase) {
    LotQuery query = LotQuery.ALL.in(phase);
    assertThat(listed(query, 2))
        .isEqualTo(those(v -> v.state().standing().orElseThrow().phase() == phase));
  }

  @Test
  void a_closed_phase_can_be_asked_for_with_a_verdict() {
    LotQuery query = LotQuery.ALL.in(Phase.SERVED).with(Verdict.OUT);
    List<LotId> expected =
        those(
            v ->
                v.state().standing().orElseThrow().phase() == Phase.SERVED
                    && verdict(v, END).filter(Verdict.OUT::equals).isPresent());
    assertThat(expected).isNotEmpty();
    assertThat(listed(query, 1)).isEqualTo(expected);
  }

  @Test
  void a_place_lists_the_lots_on_hand_that_were_left_there() {
    LotQuery query = LotQuery.ALL.at("walk-in");
    assertThat(listed(query, 3))
        .isNotEmpty()
        .isEqualTo(
            those(
                v ->
                    v.state().isOnHand()
                        && v.state()
                            .standing()
                            .orElseThrow()
                            .place()
                            .equals(Optional.of("walk-in"))));
  }

  @Test
  void a_day_lists_the_lots_whose_last_day_is_before_it() {
    LocalDate day = LocalDate.parse("2026-03-12");
    LotQuery query = LotQuery.ALL.lastDayBefore(day);
    List<LotId> expected =
        those(
            v ->
                v.state().isOnHand()
                    && v.state()
                        .standing()
                        .orElseThrow()
                        .lastDay()
                        .filter(day::isAfter)
                        .isPresent());
    assertThat(expected).isNotEmpty();
    assertThat(listed(query, 2)).containsExactlyInAnyOrderElementsOf(expected);
  }

  /** First in, first out: the trade's term for using the oldest first. */
  @ParameterizedTest(name = "pages of {0}")
  @ValueSource(ints = {1, 3, 200})
  void oldest_lists_what_is_on_hand_by_when_it_was_first_logged(int limit) {
    List<LotId> listed = listed(LotQuery.ALL.in(LotOrder.OLDEST), limit);
    assertThat(listed)
        .containsExactlyInAnyOrderElementsOf(those(view -> view.state().isOnHand()))
        .extracting(lot -> standing(lot).beganAt())
        .isSorted();
  }

  @ParameterizedTest(name = "pages of {0}")
  @ValueSource(ints = {1, 3, 200})
  void use_first_lists_last_days_then_best_quality_then_the_rest(int limit) {
    List<LotId> listed = listed(LotQuery.ALL.in(LotOrder.USE_FIRST), limit);
    assertThat(listed)
        .containsExactlyInAnyOrderElementsOf(those(view -> view.state().isOnHand()))
        .extracting(lot -> useFirst(standing(lot)))
        .isSorted();
    assertThat(listed).extracting(lot -> useFirst(standing(lot)).charAt(0)).contains('0', '1');
    List<LotId> frozen = listed(LotQuery.ALL.in(Phase.FROZEN).in(LotOrder.USE_FIRST), limit);
    assertThat(frozen)
        .isEqualTo(listed.stream().filter(l -> standing(l).phase() == Phase.FROZEN).toList());
  }

  private LotState.Standing standing(LotId lot) {
    return kitchen.lot(lot.text()).state().standing().orElseThrow();
  }

  /** What it is to be sorted by, told another way than the store does. */
  private static String useFirst(LotState.Standing standing) {
    return standing
        .lastDay()
        .map(day -> "0 " + day)
        .or(() -> standing.keeping().bestQualityBy().map(day -> "1 " + day))
        .or(() -> standing.keeping().qualityLimit().map(day -> "1 " + day))
        .orElse("2");
  }

  @Test
  void a_day_lists_the_lots_at_their_best_until_a_day_before_it() {
    LocalDate day = LocalDate.parse("2026-05-06");
    List<LotId> expected =
        those(
            v ->
                v.state().isOnHand()
                    && standing(v.state().lot())
                        .keeping()
                        .bestQualityBy()
                        .filter(day::isAfter)
                        .isPresent());
    assertThat(expected).isNotEmpty();
    assertThat(listed(LotQuery.ALL.bestQualityBefore(day), 1))
        .containsExactlyInAnyOrderElementsOf(expected);
  }

  @Test
  void owed_lists_the_lots_on_hand_that_call_for_a_hand_until_an_action_is_logged() {
    List<LotId> expected =
        those(
            v ->
                v.judged().orElseThrow().findings().stream()
                    .filter(f -> f.at(END).compareTo(Verdict.NOT_SHOWN) <= 0)
                    .filter(f -> f.settled() == Verdict.OUT || isWaitedFor(f))
                    .anyMatch(f -> v.state().isOnHand() && hasNoActSince(f, v)));
    assertThat(expected).isNotEmpty();
    assertThat(
            pages(page -> kitchen.kitchen().lots().list(LotQuery.ALL.in(LotOrder.OWED), page), 2)
                .stream()
                .map(LotState::lot))
        .containsExactlyInAnyOrderElementsOf(expected);
  }

  /** By the definition: no day count of a lot that is out, or to which something is owed. */
  private static Optional<Finding> firstDue(LotView view) {
    List<Finding> findings = view.judged().orElseThrow().findings();
    boolean isLost =
        findings.stream()
            .filter(f -> f.at(END).compareTo(Verdict.NOT_SHOWN) <= 0)
            .filter(f -> f.settled() == Verdict.OUT || isWaitedFor(f))
            .anyMatch(f -> f.settled() == Verdict.OUT || hasNoActSince(f, view));
    return findings.stream()
        .filter(f -> f.at(END) == Verdict.PENDING && f.deadline().isPresent())
        .filter(f -> f.settled() == Verdict.OUT || isWaitedFor(f))
        .filter(f -> f.settled().compareTo(Verdict.NOT_SHOWN) <= 0)
        .filter(f -> !(isLost && f.rule().shape() instanceof Shape.DayCount))
        .min(Comparator.comparing(Finding::settlesAt));
  }

  private static boolean isWaitedFor(Finding finding) {
    return finding.has(Remark.READING_OVERDUE)
        || finding.has(Remark.FOUND_SOFT)
        || finding.rule().shape() instanceof Shape.Reach;
  }

  private static boolean hasNoActSince(Finding finding, LotView view) {
    boolean isHeldHot = finding.rule().id().startsWith("hot-holding.");
    return view.judged().orElseThrow().timeline().own().stream()
        .filter(e -> !e.happenedAt().isBefore(finding.settlesAt()))
        .filter(e -> !finding.evidence().contains(e.id()))
        .noneMatch(
            e ->
                e.word() == Word.ACTION
                    || e.word() == Word.DISCARDED
                    || (isHeldHot && e.word() == Word.REHEATING));
  }

  @Test
  void due_next_lists_each_lot_once_with_its_first_deadline() {
    for (int limit : List.of(1, 3, 200)) {
      List<Due> due = pages(page -> kitchen.kitchen().reports().dueNext(page), limit);
      assertThat(due).isSortedAccordingTo(Comparator.comparing(d -> d.finding().settlesAt()));
      assertThat(due.stream().map(d -> d.lot().lot()))
          .containsExactlyInAnyOrderElementsOf(
              those(v -> v.state().isOnHand() && firstDue(v).isPresent()));
      assertThat(due)
          .allSatisfy(
              d -> {
                LotView view = kitchen.lot(d.lot().lot().text());
                assertThat(firstDue(view)).contains(d.finding());
              });
    }
    assertThat(pages(page -> kitchen.kitchen().reports().dueNext(page), 50).get(0).lot().lot())
        .isEqualTo(new LotId("fresh"));
  }

  @Test
  void the_report_lists_what_went_out_or_was_never_read_between_two_moments() {
    Instant from = Instant.parse("2026-03-05T00:00:00Z");
    Instant to = Instant.parse("2026-03-09T00:00:00Z");
    List<Finding> expected =
        all.stream()
            .flatMap(v -> v.judged().orElseThrow().findings().stream())
            .filter(
                f ->
                    f.settled() == Verdict.OUT
                        || (f.settled() == Verdict.NOT_SHOWN && isWaitedFor(f)))
            .filter(f -> !f.settlesAt().isBefore(from) && !f.settlesAt().isAfter(to))
            .toList();
    assertThat(expected).hasSizeGreaterThan(5);
    for (int limit : List.of(1, 7, 200)) {
      List<Trouble> report = report(Optional.of(from), Optional.of(to), limit);
      assertThat(report.stream().map(Trouble::finding))
          .containsExactlyInAnyOrderElementsOf(expected);
      assertThat(report).isSortedAccordingTo(Comparator.comparing(t -> t.finding().settlesAt()));
    }
  }

  @Test
  void the_report_knows_nothing_of_what_only_will_go_out() {
    assertThat(report(Optional.empty(), Optional.of(Instant.parse("2027-01-01T00:00:00Z")), 200))
        .isEqualTo(report(Optional.empty(), Optional.empty(), 200))
        .allMatch(t -> !t.finding().settlesAt().isAfter(END));
  }

  @Test
  void the_report_tells_evidence_and_what_was_done() {
    try (TestKitchen other = new TestKitchen(folder.resolve("other.db"))) {
      other.at("2026-03-02T22:00:00Z");
      other.log(
          """
          lot,food,category,when,entry,temperature,note
          A,Soup,soup_or_stew,2026-03-02T16:00:00Z,cooked,160F,
          A,,,2026-03-02T16:10:00Z,reading,130F,
          A,,,2026-03-02T18:30:00Z,reading,80F,
          B,Soup,soup_or_stew,2026-03-02T16:00:00Z,cooked,160F,
          B,,,2026-03-02T16:10:00Z,reading,130F,
          B,,,2026-03-02T18:30:00Z,reading,80F,
          B,,,2026-03-02T18:40:00Z,action,,told the chef
          B,,,2026-03-02T18:45:00Z,discarded,,
          """);
      List<Trouble> first =
          pages(
                  page ->
                      other
                          .kitchen()
                          .reports()
                          .outOfCompliance(Optional.empty(), Optional.empty(), page),
                  10)
              .stream()
              .filter(t -> t.finding().rule().id().equals("cooling.cooked.first-stage"))
              .toList();
      assertThat(first).hasSize(2);
      Trouble owed = first.get(0);
      assertThat(owed.isOwed()).isTrue();
      assertThat(owed.taken()).isEmpty();
      assertThat(owed.evidence().stream().flatMap(e -> e.temperature().stream()).map(t -> t.text()))
          .contains("80 °F");
      assertThat(owed.finding().rule().actions()).isNotEmpty();
      Trouble done = first.get(1);
      assertThat(done.isOwed()).isFalse();
      assertThat(done.taken())
          .extracting(LogEntry::word)
          .containsExactly(Word.ACTION, Word.DISCARDED);
    }
  }

  private List<Trouble> report(Optional<Instant> from, Optional<Instant> to, int limit) {
    return pages(page -> kitchen.kitchen().reports().outOfCompliance(from, to, page), limit);
  }

  @Test
  void a_cursor_of_another_list_or_of_none_is_refused() {
    Page<LotState> page = kitchen.kitchen().lots().list(LotQuery.ALL, Page.Wanted.first(1));
    for (String cursor : List.of("", "?", "abc", "bG90cw", page.next().orElseThrow())) {
      assertThatThrownBy(
              () -> kitchen.kitchen().reports().dueNext(new Page.Wanted(1, Optional.of(cursor))))
          .as(cursor)
          .isInstanceOf(Refused.class)
          .hasMessageContaining("cursor");
    }
  }

  @Test
  void a_page_has_1_to_200_items() {
    assertThatThrownBy(() -> Page.Wanted.first(0)).isInstanceOf(Refused.class);
    assertThatThrownBy(() -> Page.Wanted.first(201)).isInstanceOf(Refused.class);
    assertThat(Page.Wanted.first(200).limit()).isEqualTo(200);
  }
}
