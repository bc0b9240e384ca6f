package chillwright.service;

import chillwright.core.keeping.LotState;
import chillwright.core.log.Details;
import chillwright.core.log.Incoming;
import chillwright.core.log.LotId;
import chillwright.core.log.Misread;
import chillwright.core.log.Portions;
import chillwright.core.log.Problem;
import chillwright.core.log.Row;
import chillwright.core.log.Word;
import chillwright.storage.Session;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Lots that were made known before anything was written of them. What was said then is filled into
 * their rows when these come, so that the log itself tells what the lot is.
 */
final class AnnouncedLots {
  private final Map<LotId, Details> announced = new HashMap<>();
  private final Map<LotId, Row> earliest = new HashMap<>();

  private AnnouncedLots() {}

  /** The rows, completed where their lot was announced and has no entry yet. */
  static List<Incoming> complete(Session session, LastJudged last, List<Incoming> rows) {
    AnnouncedLots lots = new AnnouncedLots();
    lots.find(session, last, rows);
    if (lots.announced.isEmpty()) {
      return rows;
    }
    rows.forEach(lots::noteEarliest);
    return rows.stream().map(lots::completed).toList();
  }

  private void find(Session session, LastJudged last, List<Incoming> rows) {
    Set<LotId> named = new LinkedHashSet<>();
    for (Incoming incoming : rows) {
      if (incoming instanceof Row row) {
        row.lot().filter(lot -> !last.has(lot)).ifPresent(named::add);
      }
    }
    if (named.isEmpty()) {
      return;
    }
    session.lots().find(named).values().stream()
        .filter(state -> state.standing().isEmpty())
        .forEach(
            state -> announced.put(state.lot(), said(state, session.lots().sources(state.lot()))));
  }

  private static Details said(LotState state, List<LotId> sources) {
    return new Details(
        Optional.of(state.food()),
        Optional.of(state.category()),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        state.portions().made(),
        sources,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private void noteEarliest(Incoming incoming) {
    if (incoming instanceof Row row && isOfAnnounced(row)) {
      earliest.merge(row.lot().orElseThrow(), row, (a, b) -> b.when().isBefore(a.when()) ? b : a);
    }
  }

  private boolean isOfAnnounced(Row row) {
    return row.word() != Word.CORRECTION && row.lot().filter(announced::containsKey).isPresent();
  }

  private Incoming completed(Incoming incoming) {
    if (!(incoming instanceof Row row) || !isOfAnnounced(row)) {
      return incoming;
    }
    LotId lot = row.lot().orElseThrow();
    Details said = announced.get(lot);
    List<Problem> differences = differences(row, said);
    if (!differences.isEmpty()) {
      return new Misread(row.where(), row.lot(), row.id(), false, differences);
    }
    // Portions made go to the first row alone: on others the column means portions taken.
    boolean counts = row.equals(earliest.get(lot)) && !Portions.isOutgoing(row.word());
    Details filled = (counts ? said : said.uncounted()).correctedBy(row.details());
    return new Row(
        row.where(),
        row.lot(),
        row.word(),
        row.when(),
        row.id(),
        row.by(),
        row.note(),
        row.corrects(),
        filled);
  }

  private static List<Problem> differences(Row row, Details said) {
    List<Problem> problems = new ArrayList<>();
    compare(row, "food", row.details().food(), said.food().orElseThrow(), problems);
    compare(row, "category", row.details().category(), said.category().orElseThrow(), problems);
    List<LotId> from = row.details().from();
    if (!from.isEmpty() && !Set.copyOf(from).equals(Set.copyOf(said.from()))) {
      compare(row, "from", Optional.of(text(from)), text(said.from()), problems);
    }
    return problems;
  }

  private static String text(List<LotId> lots) {
    return String.join(" ", lots.stream().map(LotId::text).toList());
  }

  private static void compare(
      Row row, String column, Optional<String> given, String said, List<Problem> problems) {
    if (given.isPresent() && !given.get().equals(said)) {
      problems.add(
          new Problem(
              "differs-from-lot",
              row.where().at(column),
              given.get(),
              said.isEmpty() ? "blank" : said + ", or blank",
              "Lot %s was made known with %s here. Leave this cell blank, or use another lot."
                  .formatted(
                      row.lot().orElseThrow(), said.isEmpty() ? "nothing" : "\"" + said + "\"")));
    }
  }
}
