package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.log.LotId;
import chillwright.paper.LotSheet;
import chillwright.paper.RecordDocument;
import chillwright.paper.RecordHead;
import chillwright.paper.RecordPaper;
import chillwright.paper.Sheet;
import chillwright.rulebook.RuleBook;
import chillwright.service.LotQuery;
import chillwright.service.LotView;
import chillwright.service.Page;
import chillwright.service.Reports.Trouble;
import io.javalin.http.Context;
import io.javalin.http.Header;
import io.javalin.http.HttpStatus;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The record of some days, or of one lot, as a document to hand over. */
final class RecordPdf {
  static final String ADDRESS = "/record.pdf";
  static final String OF_LOT = "/lots/{lot}/record.pdf";

  private static final List<String> PAPERS = List.of("letter", "a4");

  /** The most lots of one document. */
  private static final int MOST_LOTS = 200;

  /** How many lots are looked through for those of the days that are asked for. */
  private static final int MOST_LOOKED_AT = 20_000;

  /** How many days are looked through for what was signed. */
  private static final int MOST_DAYS = 400;

  private final Desk desk;

  RecordPdf(Desk desk) {
    this.desk = desk;
  }

  /**
   * What it shows.
   *
   * @param troubled lots with a limit missed, or not shown, in the time
   * @param others lots that began in it, the oldest first
   * @param isCut whether there are more than fit
   */
  private record Chosen(Set<LotId> troubled, Set<LotId> others, boolean isCut) {}

  void lot(Context context) {
    Visitor visitor = desk.visitor(context);
    Optional<LotView> view = LotPage.view(desk, context, visitor);
    if (view.isEmpty()) {
      return;
    }
    Parameters parameters = new Parameters(context, visitor, Map.of("paper", "paper.size"));
    String paper = parameters.choice("paper", PAPERS, PAPERS.get(0));
    if (refuses(context, visitor, parameters)) {
      return;
    }
    List<String> facts = new ArrayList<>(rules(visitor));
    facts.add(visitor.say("paper.shows-one"));
    LotSheet sheet = new LotSheets(desk, visitor).of(view.get());
    Days none = new Days(List.of(), List.of(), List.of(), List.of());
    RecordDocument record = document(visitor, facts, List.of(sheet), none, paper);
    answer(context, visitor, record, view.get().state().lot().text());
  }

  void period(Context context) {
    Visitor visitor = desk.visitor(context);
    LocalDate today = LocalDate.ofInstant(desk.kitchen().now(), desk.zone());
    Parameters parameters =
        new Parameters(
            context,
            visitor,
            Map.of("from", "record.from", "to", "record.to", "paper", "paper.size"));
    String paper = parameters.choice("paper", PAPERS, PAPERS.get(0));
    Parameters.Period asked = parameters.period(today.minusDays(RecordPage.DAYS), today);
    if (refuses(context, visitor, parameters)) {
      return;
    }
    RecordDocument record = document(visitor, asked.from(), asked.to(), paper);
    answer(context, visitor, record, asked.from() + "_" + asked.to());
  }

  private boolean refuses(Context context, Visitor visitor, Parameters parameters) {
    List<String> faults = parameters.faults();
    if (!faults.isEmpty()) {
      String says = visitor.say("fault.paper");
      desk.faults(context, visitor, HttpStatus.BAD_REQUEST, says, faults);
    }
    return !faults.isEmpty();
  }

  private RecordDocument document(Visitor visitor, LocalDate from, LocalDate to, String paper) {
    Chosen chosen = choose(start(from), start(to.plusDays(1)).minusMillis(1));
    LotSheets sheets = new LotSheets(desk, visitor);
    List<LotSheet> lots = new ArrayList<>();
    for (Set<LotId> part : List.of(chosen.troubled(), chosen.others())) {
      part.stream()
          .map(desk.kitchen().lots()::lot)
          .flatMap(Optional::stream)
          .map(sheets::of)
          .forEach(lots::add);
    }
    List<String> facts = new ArrayList<>();
    facts.add(visitor.say("paper.period", sheets.day(from), sheets.day(to), desk.zone().getId()));
    facts.addAll(rules(visitor));
    facts.add(
        lots.isEmpty()
            ? visitor.say("paper.none")
            : visitor.say("paper.shows", chosen.troubled().size(), chosen.others().size()));
    if (chosen.isCut()) {
      facts.add(visitor.say("paper.cut"));
    }
    Days days = days(visitor, from, to);
    if (days.readings().size() >= RecordDays.MOST_READINGS) {
      facts.add(visitor.say("paper.cut-readings", RecordDays.MOST_READINGS));
    }
    if (to.isAfter(from.plusDays(MOST_DAYS))) {
      facts.add(visitor.say("paper.cut-days", from.plusDays(MOST_DAYS)));
    }
    return document(visitor, facts, lots, days, paper);
  }

  /** What it says besides lots. */
  private record Days(
      List<LotSheet.Found> troubles,
      List<String> limits,
      List<LotSheet.Row> readings,
      List<LotSheet.Row> signs) {}

  private Days days(Visitor visitor, LocalDate from, LocalDate to) {
    RecordDays days = new RecordDays(desk, visitor);
    Instant end = start(to.plusDays(1)).minusMillis(1);
    List<LotSheet.Row> readings = days.readings(start(from), end);
    LocalDate last = to.isAfter(from.plusDays(MOST_DAYS)) ? from.plusDays(MOST_DAYS) : to;
    return new Days(
        days.troubles(start(from), end), days.limits(), readings, days.days(from, last));
  }

  private Instant start(LocalDate day) {
    return day.atStartOfDay(desk.zone()).toInstant();
  }

  private Chosen choose(Instant from, Instant to) {
    Set<LotId> troubled = new LinkedHashSet<>();
    boolean isCut = false;
    Optional<String> next = Optional.empty();
    do {
      Page<Trouble> page =
          desk.kitchen()
              .reports()
              .outOfCompliance(
                  Optional.of(from), Optional.of(to), new Page.Wanted(Page.MOST, next));
      for (Trouble trouble : page.items()) {
        boolean isFull = troubled.size() == MOST_LOTS;
        isCut |= isFull && !troubled.contains(trouble.lot().lot());
        if (!isFull) {
          troubled.add(trouble.lot().lot());
        }
      }
      next = page.next();
    } while (next.isPresent() && !isCut);
    return others(from, to, troubled, isCut);
  }

  /** Lots that were on hand in the time, the newest first, up to what fits beside the others. */
  private Chosen others(Instant from, Instant to, Set<LotId> troubled, boolean isCutBefore) {
    List<LotId> there = new ArrayList<>();
    int room = MOST_LOTS - troubled.size();
    int looked = 0;
    Optional<String> next = Optional.empty();
    do {
      Page<LotState> page =
          desk.kitchen().lots().list(LotQuery.ALL, new Page.Wanted(Page.MOST, next));
      page.items().stream()
          .filter(lot -> !troubled.contains(lot.lot()) && wasThere(lot, from, to))
          .map(LotState::lot)
          .forEach(there::add);
      looked += page.items().size();
      next = page.next();
    } while (next.isPresent() && looked < MOST_LOOKED_AT && there.size() <= room);
    boolean isCut = isCutBefore || there.size() > room || next.isPresent();
    List<LotId> shown = new ArrayList<>(there.subList(0, Math.min(room, there.size())));
    Collections.reverse(shown);
    return new Chosen(troubled, new LinkedHashSet<>(shown), isCut);
  }

  /** Begun before the end of the time, and not closed before it began. */
  private static boolean wasThere(LotState lot, Instant from, Instant to) {
    boolean isGone = lot.portions().closedAt().filter(from::isAfter).isPresent();
    return !isGone && lot.standing().filter(s -> !s.beganAt().isAfter(to)).isPresent();
  }

  private List<String> rules(Visitor visitor) {
    RuleBook book = desk.kitchen().judge().book();
    return List.of(
        visitor.say("paper.made", new LotSheets(desk, visitor).moment(desk.kitchen().now())),
        visitor.say(
            "paper.rules", visitor.language().named(book.title()), book.id(), book.version()));
  }

  /** That a verdict is none on the food, said once, and who decides. */
  private List<String> cautions(Visitor visitor) {
    String caution = visitor.say("paper.caution");
    String english = desk.kitchen().judge().book().defers().strip();
    String defers = visitor.language().saidByRules(english);
    return defers.contains(caution) ? List.of(defers) : List.of(caution, defers);
  }

  private RecordDocument document(
      Visitor visitor, List<String> facts, List<LotSheet> lots, Days days, String paper) {
    RecordHead head =
        new RecordHead(
            visitor.say("paper.record"),
            desk.kitchen().settings().name().orElse(visitor.say("kitchen.unnamed")),
            facts,
            cautions(visitor));
    Sheet.Size size = Sheet.page(paper).orElseThrow();
    return new RecordDocument(
        head, days.troubles(), lots, days.limits(), days.readings(), days.signs(), size);
  }

  private void answer(Context context, Visitor visitor, RecordDocument record, String name) {
    byte[] pdf = RecordPaper.of(record, new PaperWords(visitor.language()));
    context.header(Header.CONTENT_DISPOSITION, "inline; filename=\"record-" + name + ".pdf\"");
    context.contentType(LabelsPdf.TYPE).result(pdf);
  }
}
