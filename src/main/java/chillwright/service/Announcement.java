package chillwright.service;

import chillwright.core.keeping.LotState;
import chillwright.core.log.KeepingList;
import chillwright.core.log.LotId;
import chillwright.core.log.Portions;
import chillwright.core.log.Problem;
import chillwright.logfile.Cells;
import chillwright.storage.Assessed;
import chillwright.storage.Session;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** A lot being made known before anything is written of it: checked as a whole, then kept. */
final class Announcement {
  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  private final Session session;
  private final NewLot lot;
  private final Map<LotId, LotState> sources;
  private final List<Problem> problems = new ArrayList<>();

  Announcement(Session session, NewLot lot) {
    this.session = session;
    this.lot = lot;
    this.sources = session.lots().find(lot.from());
  }

  /**
   * Keeps the lot, under a made code if it has none.
   *
   * @throws Refused with every fault, or where the lot exists
   */
  LotState keep(Judge judge, Instant now) {
    lot.lot().ifPresent(code -> requireNew(session, code));
    checkSources(judge.zone());
    checkText("food", lot.food(), Cells.LONGEST_TEXT, lot.from().size() != 1);
    checkText("category", lot.category(), Cells.LONGEST_TEXT, lot.from().size() != 1);
    checkText("note", lot.note(), Cells.LONGEST_NOTE, false);
    checkCategory(judge.keepingList());
    checkPortions();
    if (!problems.isEmpty()) {
      throw new Refused(Refused.Why.FAULTS, problems);
    }
    LotState state = state(LocalDate.ofInstant(now, judge.zone()));
    session.lots().save(List.of(new Assessed(state, lot.from(), List.of())), now);
    return state;
  }

  private LotState state(LocalDate today) {
    Optional<LotState> only =
        lot.from().size() == 1 ? Optional.of(sources.get(lot.from().get(0))) : Optional.empty();
    return new LotState(
        lot.lot().orElseGet(() -> FreeCodes.ofDay(session, today)),
        lot.food().or(() -> only.map(LotState::food)).orElseThrow(),
        lot.category().or(() -> only.map(LotState::category)).orElseThrow(),
        lot.note(),
        new Portions(lot.portions(), lot.portions(), Optional.empty()),
        Optional.empty());
  }

  static void requireNew(Session session, LotId code) {
    if (session.lots().find(code).isPresent()) {
      throw Refused.field(
          Refused.Why.LOT_EXISTS,
          Refused.problem(
              "lot-exists",
              "/lot",
              code.text(),
              "a code that no other lot has",
              "There is a lot %s already. Give another code, or none to have one made."
                  .formatted(code)));
    }
  }

  private void checkSources(ZoneId zone) {
    for (int i = 0; i < lot.from().size(); i++) {
      LotId source = lot.from().get(i);
      if (Optional.ofNullable(sources.get(source)).flatMap(LotState::standing).isEmpty()) {
        add(
            "unknown-source",
            "/from/" + i,
            source.text(),
            "lots of which something is written",
            "Nothing is written of a lot %s. Check the code.".formatted(source));
      } else if (lot.from().indexOf(source) < i) {
        add(
            "source-twice",
            "/from/" + i,
            source.text(),
            "each lot once",
            "Lot %s is named twice.".formatted(source));
      } else {
        checkThere(i, source, zone);
      }
    }
  }

  private void checkThere(int index, LotId source, ZoneId zone) {
    Optional<Instant> thrown = session.log().log(source).flatMap(log -> log.thrownAway(lot.lot()));
    thrown.ifPresent(
        at ->
            add(
                "source-discarded",
                "/from/" + index,
                source.text(),
                "lots of which something is left",
                ("All of lot %s was discarded on %s. Check the code; if some of it had gone into"
                        + " another lot before that, write those portions of %s down first.")
                    .formatted(source, MOMENT.withZone(zone).format(at), source)));
  }

  private void checkText(String field, Optional<String> text, int longest, boolean needed) {
    if (text.isEmpty() && needed) {
      add(
          "missing",
          "/" + field,
          "",
          "the " + field + "; or one lot in \"from\", to take it over",
          "Say what the lot is: its %s is missing.".formatted(field));
    }
    text.filter(t -> t.isBlank() || t.codePointCount(0, t.length()) > longest)
        .ifPresent(
            t ->
                add(
                    t.isBlank() ? "missing" : "too-long",
                    "/" + field,
                    t.isBlank() ? "" : t.codePointCount(0, t.length()) + " characters",
                    "1 to " + longest + " characters",
                    "The %s is blank or too long.".formatted(field)));
  }

  private void checkCategory(KeepingList list) {
    lot.category()
        .filter(key -> !key.isBlank() && list.category(key).isEmpty())
        .ifPresent(
            key ->
                add(
                    "unknown-category",
                    "/category",
                    key,
                    "a key of the keeping list",
                    "\"%s\" is not in the keeping list.%s".formatted(key, list.question(key))));
  }

  private void checkPortions() {
    if (lot.portions().isPresent() && lot.portions().getAsInt() < 1) {
      add(
          "bad-portions",
          "/portions",
          Integer.toString(lot.portions().getAsInt()),
          "1 or more",
          "A lot has at least one portion, or its portions are not counted.");
    }
  }

  private void add(String code, String pointer, String given, String allowed, String says) {
    problems.add(Refused.problem(code, pointer, given, allowed, says));
  }
}
