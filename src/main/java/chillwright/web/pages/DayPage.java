package chillwright.web.pages;

import chillwright.core.keeping.LotOrder;
import chillwright.core.keeping.LotState;
import chillwright.core.log.Incoming;
import chillwright.core.log.LogEntry;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Verdict;
import chillwright.print.Figures;
import chillwright.print.Sentences;
import chillwright.service.LotQuery;
import chillwright.service.Page;
import chillwright.service.Places.PlaceReading;
import chillwright.service.Refused;
import chillwright.service.Reports.Due;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/** The day: the round of places, and what the next shift takes over. */
final class DayPage {
  static final String ADDRESS = "/day";
  static final String READINGS = "/day/readings";

  /** Places that were read in this time belong to the round: common practice, no source. */
  private static final Duration LATELY = Duration.ofDays(14);

  private static final int SHOWN = 50;

  private final Desk desk;

  DayPage(Desk desk) {
    this.desk = desk;
  }

  void show(Context context) {
    Visitor visitor = desk.visitor(context);
    answer(context, HttpStatus.OK, visitor, Filled.with(Map.of()));
  }

  private void answer(Context context, HttpStatus status, Visitor visitor, Filled form) {
    Instant now = desk.kitchen().now();
    Page<Due> dues = desk.kitchen().reports().dueNext(Page.Wanted.first(SHOWN));
    List<DayView.Open> open = new ArrayList<>(owed(visitor, now));
    dues.items().forEach(due -> open.add(running(due, visitor, now)));
    DayView view = new DayView(places(visitor, now), open, dues.next().isPresent(), form);
    Frame frame = desk.frame(visitor, "page.day", ADDRESS, List.of());
    desk.answer(context, status, Templates.PAGES.day(frame, view).render());
  }

  private List<DayView.Place> places(Visitor visitor, Instant now) {
    Map<String, LogEntry> last = new LinkedHashMap<>();
    for (PlaceReading reading :
        desk.kitchen()
            .places()
            .readings(
                Optional.empty(),
                Optional.of(now.minus(LATELY)),
                Optional.empty(),
                Page.Wanted.first(Page.MOST))
            .items()) {
      reading
          .standing()
          .filter(entry -> entry.details().place().isPresent())
          .ifPresent(entry -> last.putIfAbsent(entry.details().place().get(), entry));
    }
    TreeSet<String> names = new TreeSet<>(new Known(desk.kitchen()).places());
    names.addAll(last.keySet());
    return names.stream().map(name -> place(name, last.get(name), visitor, now)).toList();
  }

  private DayView.Place place(String name, LogEntry last, Visitor visitor, Instant now) {
    String lots = LotsPages.ON_HAND + "?place=" + URLEncoder.encode(name, StandardCharsets.UTF_8);
    if (last == null) {
      return new DayView.Place(name, lots, "", false);
    }
    String read =
        last.temperature().map(t -> t.text()).orElse("")
            + ", "
            + desk.clock(last.happenedAt(), visitor);
    LocalDate today = LocalDate.ofInstant(now, desk.zone());
    boolean isToday = LocalDate.ofInstant(last.happenedAt(), desk.zone()).equals(today);
    return new DayView.Place(name, lots, read, isToday);
  }

  private List<DayView.Open> owed(Visitor visitor, Instant now) {
    LotQuery owed = LotQuery.ALL.in(LotOrder.OWED);
    return desk.kitchen().lots().list(owed, Page.Wanted.first(SHOWN)).items().stream()
        .map(lot -> owed(lot, visitor, now))
        .toList();
  }

  private static DayView.Open owed(LotState lot, Visitor visitor, Instant now) {
    Optional<Verdict> verdict = lot.standing().flatMap(standing -> standing.verdicts().at(now));
    return new DayView.Open(
        lot.lot().text(), lot.food(), Sign.of(verdict), "", visitor.say("record.owed"));
  }

  private DayView.Open running(Due due, Visitor visitor, Instant now) {
    Finding finding = due.finding();
    Instant last = finding.deadline().orElse(finding.settlesAt());
    Sentences sentences =
        new Sentences(desk.zone(), Figures.scale(due.timeline()), now, visitor.language());
    return new DayView.Open(
        due.lot().lot().text(),
        due.lot().food(),
        Sign.of(Verdict.PENDING),
        desk.clock(last, visitor),
        sentences.says(finding));
  }

  /** Takes a reading of a place. */
  void read(Context context) {
    Optional<Form> form = desk.form(context);
    if (form.isEmpty()) {
      return;
    }
    Visitor visitor = desk.visitor(context);
    EntryForm entry = new EntryForm(form.get(), desk.zone(), desk.kitchen().now());
    Incoming row = entry.row("");
    List<String> faults = EntryForm.faults(row);
    if (faults.isEmpty()) {
      try {
        desk.kitchen().logbook().log(List.of(row), entry.once(READINGS));
        context.redirect(ADDRESS, HttpStatus.SEE_OTHER);
        return;
      } catch (Refused refused) {
        faults = EntryForm.faults(refused.problems());
      }
    }
    Filled again = new Filled(new HashMap<>(entry.fields()), faults, "");
    answer(context, HttpStatus.UNPROCESSABLE_CONTENT, visitor, again);
  }
}
