package chillwright.web.pages;

import chillwright.core.keeping.Keeping;
import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.keeping.StillGood;
import chillwright.core.log.Ending;
import chillwright.core.log.LotId;
import chillwright.core.log.Phase;
import chillwright.core.rules.Verdict;
import chillwright.logfile.CsvWriter;
import chillwright.service.LotQuery;
import chillwright.service.Page;
import chillwright.service.RoomLots.RoomLot;
import io.javalin.http.Context;
import io.javalin.http.Header;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The lists of lots as tables that a spreadsheet opens, every part of them. */
final class LotsCsv {
  static final String ON_HAND = LotsPages.ON_HAND + ".csv";
  static final String ALL = LotsPages.ALL + ".csv";

  private static final List<String> HEADER =
      List.of(
          "lot",
          "food",
          "category",
          "phase",
          "place",
          "portions_made",
          "portions_left",
          "on_hand",
          "ended",
          "began",
          "verdict",
          "action_owed_since",
          "last_day",
          "days_left_when_thawed",
          "best_quality_by",
          "quality_limit",
          "best_at_room_until",
          "governs",
          "rule_set",
          "rule_set_version",
          "note");

  /** What was asked: the day, and how many days after it the food must still be good. */
  private static final List<String> OF_GOOD = List.of("good_on", "good_days_after");

  private final Desk desk;

  LotsCsv(Desk desk) {
    this.desk = desk;
  }

  void onHand(Context context) throws IOException {
    Visitor visitor = desk.visitor(context);
    Parameters parameters = LotsPages.parameters(context, visitor);
    LotsPages.Asked asked = LotsPages.asked(parameters, desk, visitor);
    if (parameters.faults().isEmpty()) {
      answer(context, asked, "on-hand" + named(asked.good()), visitor);
    } else {
      LotsPages.refuse(desk, context, visitor, parameters);
    }
  }

  void all(Context context) throws IOException {
    LotsPages.Asked every = new LotsPages.Asked(LotQuery.ALL, Optional.empty());
    answer(context, every, "lots", desk.visitor(context));
  }

  /** A table that was saved still tells by its name what was asked, with no row in it too. */
  private static String named(Optional<StillGood> good) {
    return good.map(on -> "-" + String.join("-", cells(on)).replaceFirst("-$", "")).orElse("");
  }

  private static List<String> cells(StillGood asked) {
    return List.of(asked.day().toString(), number(asked.after()));
  }

  /** What is told with every lot. */
  private record Asking(
      List<String> question, Optional<GoodOn> good, Map<LotId, LocalDate> room, Instant now) {}

  /** The first part is found before the answer begins, so a fault in it is told as one. */
  private void answer(Context context, LotsPages.Asked asked, String name, Visitor visitor)
      throws IOException {
    LotQuery query = asked.query();
    Page<LotState> page = desk.kitchen().lots().list(query, Page.Wanted.first(Page.MOST));
    Asking asking =
        new Asking(
            asked.good().map(LotsCsv::cells).orElse(List.of()),
            asked.good().map(on -> new GoodOn(desk, visitor, on)),
            desk.kitchen().roomLots().list().stream()
                .collect(Collectors.toMap(lot -> lot.lot().lot(), RoomLot::until)),
            desk.kitchen().now());
    context.contentType("text/csv; charset=utf-8; header=present");
    context.header(Header.CONTENT_DISPOSITION, "attachment; filename=\"" + name + ".csv\"");
    Writer out = new OutputStreamWriter(context.outputStream(), StandardCharsets.UTF_8);
    CsvWriter csv = CsvWriter.forSpreadsheets(out);
    csv.write(joined(HEADER, asked.good().isPresent() ? OF_GOOD : List.of()));
    write(csv, page, asking);
    while (page.next().isPresent()) {
      page = desk.kitchen().lots().list(query, new Page.Wanted(Page.MOST, page.next()));
      write(csv, page, asking);
    }
    out.flush();
  }

  private void write(CsvWriter csv, Page<LotState> page, Asking asking) throws IOException {
    Map<LotId, Ending> endings = desk.kitchen().tracing().endings(page.items());
    Set<LotId> fit = desk.kitchen().fitLots().of(page.items());
    for (LotState lot : page.items()) {
      if (asking.good().flatMap(good -> good.against(lot)).isEmpty()) {
        boolean isFit = fit.contains(lot.lot());
        List<String> cells =
            cells(
                isFit ? lot : lot.withoutDates(),
                Optional.ofNullable(endings.get(lot.lot())),
                Optional.ofNullable(asking.room().get(lot.lot())).filter(until -> isFit),
                asking.now());
        csv.write(joined(cells, asking.question()));
      }
    }
  }

  private static List<String> joined(List<String> cells, List<String> more) {
    return Stream.concat(cells.stream(), more.stream()).toList();
  }

  private List<String> cells(
      LotState lot, Optional<Ending> ending, Optional<LocalDate> room, Instant now) {
    Function<Function<Standing, Optional<?>>, String> standing =
        cell -> lot.standing().flatMap(cell).map(Object::toString).orElse("");
    Function<Function<Keeping, Optional<?>>, String> keeping =
        cell -> standing.apply(s -> cell.apply(where(s, room)));
    return List.of(
        lot.lot().text(),
        lot.food(),
        lot.category(),
        standing.apply(s -> Optional.of(s.phase().word())),
        standing.apply(Standing::place),
        number(lot.portions().made()),
        number(lot.portions().left()),
        lot.isOnHand() ? "yes" : "no",
        ending.map(Ending::says).orElse(""),
        standing.apply(s -> Optional.of(time(s.beganAt()))),
        standing.apply(s -> s.verdicts().at(now).map(Verdict::text)),
        standing.apply(s -> s.owedFrom().filter(from -> !now.isBefore(from)).map(this::time)),
        standing.apply(Standing::lastDay),
        lot.standing().map(s -> number(s.keeping().daysLeftWhenThawed())).orElse(""),
        keeping.apply(Keeping::bestQualityBy),
        keeping.apply(Keeping::qualityLimit),
        room.map(LocalDate::toString).orElse(""),
        keeping.apply(k -> k.governs().map(Keeping.Governs::key)),
        standing.apply(s -> Optional.of(s.judgedBy().ruleSet())),
        standing.apply(s -> Optional.of(s.judgedBy().version())),
        lot.note().orElse(""));
  }

  /** The dates that count where it is: those of a freezer hold for nothing that left or thawed. */
  private static Keeping where(Standing standing, Optional<LocalDate> room) {
    return standing.phase() == Phase.FROZEN && room.isEmpty()
        ? standing.keeping()
        : standing.keeping().outOfFreezer();
  }

  /** As the kitchen's clock showed it, with its offset. */
  private OffsetDateTime time(Instant moment) {
    return OffsetDateTime.ofInstant(moment, desk.zone());
  }

  private static String number(OptionalInt count) {
    return count.isPresent() ? Integer.toString(count.getAsInt()) : "";
  }
}
