package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.log.HandOut;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.service.Tracing;
import chillwright.service.Tracing.Trace;
import chillwright.service.Tracing.Traced;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/** Tracing: every lot made of a food or of a lot, and everybody who got some of it. */
final class TracePage {
  static final String ADDRESS = "/trace";
  static final String CSV = "/trace.csv";

  private static final String FOOD = "food";
  private static final String LOT = "lot";
  private static final Map<String, String> NAMES = Map.of(FOOD, "batch.food", LOT, "trace.lot");

  /** More lots are no page that anybody reads; the table has them all. */
  private static final int SHOWN = 500;

  private static final int LONGEST = 500;
  private static final List<String> HEADER =
      List.of(
          "lot",
          "food",
          "began",
          "from",
          "phase",
          "place",
          "portions_made",
          "portions_left",
          "when",
          "what",
          "portions",
          "to",
          "by",
          "note");

  private final Desk desk;

  TracePage(Desk desk) {
    this.desk = desk;
  }

  static String of(LotId lot) {
    return ADDRESS + "?lot=" + lot;
  }

  /** What was asked for, and what was found of it; nothing where nothing was asked. */
  private record Asked(String food, String lot, Optional<Trace> trace) {}

  private Asked asked(Parameters parameters, Visitor visitor) {
    Optional<String> food = parameters.text(FOOD, LONGEST);
    Optional<String> code = parameters.text(LOT, LONGEST);
    Optional<Trace> trace = Optional.empty();
    if (parameters.faults().isEmpty() && code.isPresent()) {
      trace =
          code.filter(LotId::isCode)
              .flatMap(lot -> desk.kitchen().tracing().lot(new LotId(lot), Tracing.MOST_LOTS));
      if (trace.isEmpty()) {
        parameters.refuse(visitor.say("fault.no-lot", code.get()));
      }
    } else if (parameters.faults().isEmpty()) {
      trace = food.map(desk.kitchen().tracing()::food);
    }
    return new Asked(code.isPresent() ? "" : food.orElse(""), code.orElse(""), trace);
  }

  void show(Context context) {
    Visitor visitor = desk.visitor(context);
    Parameters parameters = new Parameters(context, visitor, NAMES);
    Asked asked = asked(parameters, visitor);
    List<Traced> lots = asked.trace().map(Trace::lots).orElse(List.of());
    List<String> notices = new ArrayList<>();
    if (asked.trace().filter(Trace::isCut).isPresent()) {
      notices.add(visitor.say("trace.cut", Tracing.MOST_LOTS));
    }
    if (lots.size() > SHOWN) {
      notices.add(visitor.say("trace.shown", SHOWN));
    }
    OutWords words = new OutWords(desk, visitor);
    TraceView view =
        new TraceView(
            asked.food(),
            asked.lot(),
            new Known(desk.kitchen()).foods(),
            asked.trace().isPresent() ? says(lots, visitor) : "",
            notices,
            lots.stream().limit(SHOWN).map(lot -> line(lot, words, visitor)).toList(),
            asked.trace().isPresent() ? CSV + query(asked) : "");
    Frame frame =
        desk.frame(visitor, "page.trace", ADDRESS, Frame.Notice.plain(parameters.faults()));
    HttpStatus status = parameters.faults().isEmpty() ? HttpStatus.OK : HttpStatus.BAD_REQUEST;
    desk.answer(context, status, Templates.PAGES.trace(frame, view));
  }

  private static String query(Asked asked) {
    return asked.lot().isEmpty()
        ? "?food=" + URLEncoder.encode(asked.food(), StandardCharsets.UTF_8)
        : "?lot=" + asked.lot();
  }

  private static String says(List<Traced> lots, Visitor visitor) {
    int left =
        lots.stream()
            .map(Traced::lot)
            .filter(LotState::isOnHand)
            .mapToInt(lot -> lot.portions().left().orElse(0))
            .sum();
    return lots.isEmpty()
        ? visitor.say("trace.none")
        : visitor.say("trace.says", lots.size(), left);
  }

  private TraceView.Line line(Traced traced, OutWords words, Visitor visitor) {
    LotState lot = traced.lot();
    return new TraceView.Line(
        lot.lot().text(),
        lot.food(),
        lot.standing().map(s -> desk.moment(s.beganAt(), visitor)).orElse(""),
        LotLines.where(lot, traced.handOuts(), visitor),
        traced.from().stream()
            .map(from -> new TraceView.Source(from.lot().text(), from.food()))
            .toList(),
        traced.handOuts().stream().map(words::line).toList());
  }

  void table(Context context) throws IOException {
    Visitor visitor = desk.visitor(context);
    Parameters parameters = new Parameters(context, visitor, NAMES);
    Asked asked = asked(parameters, visitor);
    if (asked.trace().isEmpty()) {
      String says = visitor.say("fault.list");
      List<String> faults =
          parameters.faults().isEmpty()
              ? List.of(visitor.say("trace.nothing-asked"))
              : parameters.faults();
      desk.faults(context, visitor, HttpStatus.BAD_REQUEST, says, faults);
      return;
    }
    List<List<String>> rows = new ArrayList<>();
    for (Traced traced : asked.trace().get().lots()) {
      if (traced.handOuts().isEmpty()) {
        rows.add(cells(traced, List.of("", "", "", "", "", "")));
      }
      traced.handOuts().forEach(out -> rows.add(cells(traced, cells(out))));
    }
    new Table(HEADER, rows).answer(context, "trace");
  }

  private List<String> cells(Traced traced, List<String> out) {
    LotState lot = traced.lot();
    List<String> cells =
        new ArrayList<>(
            List.of(
                lot.lot().text(),
                lot.food(),
                lot.standing().map(s -> time(s.beganAt())).orElse(""),
                traced.from().stream()
                    .map(from -> from.lot().text())
                    .collect(Collectors.joining(" ")),
                lot.standing().map(s -> s.phase().word()).orElse(""),
                lot.standing().flatMap(Standing::place).orElse(""),
                number(lot.portions().made()),
                number(lot.portions().left())));
    cells.addAll(out);
    return cells;
  }

  private List<String> cells(HandOut out) {
    LogEntry entry = out.entry();
    return List.of(
        time(entry.happenedAt()),
        out.kind().key(),
        number(entry.details().portions()),
        entry.details().to().orElse(""),
        entry.by().orElse(""),
        entry.note().orElse(""));
  }

  private String time(Instant moment) {
    return OffsetDateTime.ofInstant(moment, desk.zone()).toString();
  }

  private static String number(OptionalInt count) {
    return count.isPresent() ? Integer.toString(count.getAsInt()) : "";
  }
}
