package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.kitchen.DaySign;
import chillwright.core.kitchen.Handover;
import chillwright.core.kitchen.KnownPlace.Kind;
import chillwright.core.log.Incoming;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Problem.Where.InField;
import chillwright.core.rules.Verdict;
import chillwright.print.Figures;
import chillwright.print.Sentences;
import chillwright.service.Day;
import chillwright.service.Day.Open;
import chillwright.service.Day.PlaceRound;
import chillwright.service.Days;
import chillwright.service.Refused;
import chillwright.service.Reports.Due;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The day: the round of places, and what the next shift takes over. */
final class DayPage {
  static final String ADDRESS = "/day";
  static final String READINGS = "/day/readings";
  static final String HANDOVERS = "/day/handovers";
  static final String SIGNATURES = "/day/signatures";

  private static final String SAVED = "saved";

  private final Desk desk;

  DayPage(Desk desk) {
    this.desk = desk;
  }

  void show(Context context) {
    Visitor visitor = desk.visitor(context);
    Filled form =
        KeptEntry.of(context)
            .map(sent -> kept(sent, visitor))
            .orElseGet(() -> Filled.with(Map.of()));
    Set<String> saved = Set.copyOf(context.queryParams(SAVED));
    answer(context, HttpStatus.OK, visitor, view(visitor, form, saved, Map.of()));
  }

  /** What a phone had kept, and what is wrong with it. */
  private Filled kept(Form form, Visitor visitor) {
    Instant now = desk.kitchen().now();
    EntryForm entry = new EntryForm(form, desk.zone(), now);
    Incoming row = entry.row("");
    List<String> faults = EntryForm.faults(row, visitor);
    List<Question> asked =
        faults.isEmpty() ? RoundDoubt.asked(placeOf(form), row, desk, visitor) : List.of();
    Map<String, String> fields = KeptEntry.fields(form, desk.zone(), now);
    fields.put("form", READINGS);
    return new Filled(fields, faults, asked, Set.of());
  }

  private void answer(Context context, HttpStatus status, Visitor visitor, Filled form) {
    answer(context, status, visitor, view(visitor, form, Set.of(), Map.of()));
  }

  private void answer(Context context, HttpStatus status, Visitor visitor, DayView view) {
    Frame frame = desk.frame(visitor, "page.day", ADDRESS, List.of());
    desk.answer(context, status, Templates.PAGES.day(frame, view));
  }

  /**
   * The page.
   *
   * @param saved places where something was just saved
   * @param unsaved what of the round was not saved, by its place
   */
  private DayView view(
      Visitor visitor, Filled form, Set<String> saved, Map<String, Filled> unsaved) {
    Instant now = desk.kitchen().now();
    Day day = desk.kitchen().days().day(desk.kitchen().days().today());
    Set<String> owed = new Undone(desk, visitor).places();
    return new DayView(
        day.round().stream().map(place -> place(place, owed, visitor, now)).toList(),
        day.others().stream().map(place -> place(place, owed, visitor, now)).toList(),
        day.open().stream().map(open -> open(day, open, visitor, now)).toList(),
        day.hasMoreOpen(),
        day.isClosed(),
        day.signs().stream().map(sign -> says(sign, visitor)).toList(),
        desk.people(),
        day.out(),
        day.unread(),
        owed.size(),
        form,
        saved,
        unsaved);
  }

  private DayView.Place place(PlaceRound place, Set<String> owed, Visitor visitor, Instant now) {
    String lots =
        LotsPages.ON_HAND + "?place=" + URLEncoder.encode(place.name(), StandardCharsets.UTF_8);
    RoundWords words = new RoundWords(desk, visitor);
    List<String> says = new ArrayList<>();
    boolean isAsked = place.isDue() || place.read() > 0;
    String unread = visitor.say(isAsked ? "day.unread" : "day.not-asked");
    says.add(place.last().map(last -> read(last, isAsked, visitor, now)).orElse(unread));
    place.limit().map(limit -> PlaceWords.limit(limit, visitor)).ifPresent(says::add);
    place
        .known()
        .filter(known -> known.rounds() > 0)
        .map(known -> visitor.say("day.rounds", place.read(), known.rounds()))
        .ifPresent(says::add);
    if (isReadAgain(place)) {
      says.add(visitor.say("day.rounds.same", Figures.duration(Days.SAME_ROUND)));
    }
    return new DayView.Place(
        place.name(),
        lots,
        says,
        PlaceWords.sign(place),
        PlaceWords.standing(place, visitor),
        place.isDue(),
        place.isNotInUse(),
        place.known().filter(known -> known.kind() == Kind.FREEZER).isPresent(),
        place.inside().stream()
            .map(lot -> new DayView.Inside(lot.lot().text(), lot.food()))
            .toList(),
        new WarmFreezer(desk, visitor).ways(place),
        place.calls() || owed.contains(place.name()),
        words.acts(place),
        words.readings(place));
  }

  /** Whether fewer rounds are counted than there are readings. */
  private static boolean isReadAgain(PlaceRound place) {
    long standing = place.readings().stream().filter(r -> r.standing().isPresent()).count();
    return place.known().filter(known -> known.rounds() > 0).isPresent() && place.read() < standing;
  }

  private String read(LogEntry last, boolean isAsked, Visitor visitor, Instant now) {
    String read =
        last.temperature().map(each -> each.text(visitor.scale())).orElse("")
            + ", "
            + desk.clock(last.happenedAt(), visitor);
    LocalDate today = LocalDate.ofInstant(now, desk.zone());
    boolean isToday = LocalDate.ofInstant(last.happenedAt(), desk.zone()).equals(today);
    String before = isAsked ? "day.read-before" : "day.read-last";
    return visitor.say(isToday ? "day.read" : before, read);
  }

  private DayView.Open open(Day day, Open open, Visitor visitor, Instant now) {
    LotState lot = open.lot();
    Optional<Verdict> verdict = lot.standing().flatMap(standing -> standing.verdicts().at(now));
    Optional<Instant> due =
        open.due().map(Due::finding).map(f -> f.deadline().orElse(f.settlesAt()));
    return new DayView.Open(
        lot.lot().text(),
        lot.food(),
        open.wrong().isPresent() ? Sign.of(verdict) : Sign.of(Verdict.PENDING),
        due.map(moment -> desk.clock(moment, visitor)).orElse(""),
        says(open, visitor, now),
        day.takenOver(lot.lot()).map(over -> says(over, visitor)).orElse(""));
  }

  private List<String> says(Open open, Visitor visitor, Instant now) {
    List<String> says = new ArrayList<>();
    open.owed().map(owed -> visitor.say("day.owed", says(owed, visitor, now))).ifPresent(says::add);
    open.out().map(out -> says(out, visitor, now)).ifPresent(says::add);
    open.due().map(due -> says(due, visitor, now)).ifPresent(says::add);
    new NotForUse(desk, visitor).mended(open.lot()).ifPresent(says::add);
    return says;
  }

  private String says(Due due, Visitor visitor, Instant now) {
    return new Sentences(desk.zone(), visitor.scale(), now, visitor.language())
        .says(due.finding(), due.timeline(), due.ruleSet());
  }

  private String says(Handover over, Visitor visitor) {
    String by = visitor.say("day.over", over.by(), desk.clock(over.writtenAt(), visitor));
    return over.note().map(note -> by + ": " + note).orElse(by);
  }

  private String says(DaySign sign, Visitor visitor) {
    String key = sign.word() == DaySign.Word.CLOSED ? "day.closed" : "day.reopened";
    String line =
        visitor.say(
            key,
            sign.by(),
            desk.moment(sign.writtenAt(), visitor),
            sign.unfinished(),
            sign.unread(),
            desk.kitchen().places().unanswered(sign.writtenAt()).size());
    String out = sign.out().isPresent() ? ". " + visitor.say("day.out", sign.out().getAsInt()) : "";
    return line + out + sign.note().map(note -> ": " + note).orElse("");
  }

  /** Notes who takes over the lots that are ticked. */
  void handOver(Context context) {
    take(
        context,
        HANDOVERS,
        (days, form) -> {
          Map<String, String> cells = form.all();
          cells.put("lots", form.words("lots"));
          days.handOver(days.today(), cells, form.once(HANDOVERS));
        });
  }

  /** Closes the day or opens it again; of what is left undone it asks once. */
  void sign(Context context) {
    Optional<Form> sent = desk.form(context);
    if (sent.isEmpty()) {
      return;
    }
    Form form = sent.get();
    Day today = desk.kitchen().days().day(desk.kitchen().days().today());
    boolean closes = form.text("word").equals(DaySign.Word.CLOSED.key()) && !today.isClosed();
    Visitor visitor = desk.visitor(context);
    List<Question> asked =
        closes && form.has("by") ? new Undone(desk, visitor).asked(today) : List.of();
    if (Question.isOpen(asked, form.answered())) {
      Map<String, String> fields = form.all();
      fields.put("form", SIGNATURES);
      Filled again = new Filled(fields, List.of(), asked, form.answered());
      answer(context, HttpStatus.UNPROCESSABLE_CONTENT, visitor, again);
      return;
    }
    take(
        context,
        SIGNATURES,
        (days, sign) -> days.sign(days.today(), sign.all(), sign.once(SIGNATURES)));
  }

  private void take(Context context, String address, BiConsumer<Days, Form> told) {
    Optional<Form> form = desk.form(context);
    if (form.isEmpty()) {
      return;
    }
    try {
      told.accept(desk.kitchen().days(), form.get());
      context.redirect(ADDRESS + "#open", HttpStatus.SEE_OTHER);
    } catch (Refused refused) {
      Map<String, String> fields = form.get().all();
      fields.put("form", address);
      Filled again = Filled.refused(fields, faults(refused, desk.visitor(context)));
      HttpStatus status =
          refused.why() == Refused.Why.DAY_STANDS
              ? HttpStatus.CONFLICT
              : HttpStatus.UNPROCESSABLE_CONTENT;
      answer(context, status, desk.visitor(context), again);
    }
  }

  /** A page has ticks, not codes. */
  private List<String> faults(Refused refused, Visitor visitor) {
    return refused.problems().stream()
        .map(
            problem ->
                problem.code().equals("missing")
                        && problem.where() instanceof InField cell
                        && cell.pointer().endsWith("/lots")
                    ? visitor.say("day.over.none")
                    : desk.times(visitor).retold(visitor.language().fault(problem.says())))
        .toList();
  }

  /** Takes a reading of a place, what was done about one, or that one is wrong. */
  void read(Context context) {
    Optional<Form> form = desk.form(context);
    if (form.isEmpty()) {
      return;
    }
    Visitor visitor = desk.visitor(context);
    if (RoundForm.isIn(form.get())) {
      takeRound(context, visitor, form.get());
      return;
    }
    // Without a figure a correction makes void what it names, so nobody does that by a blank field.
    boolean isBlankCorrection =
        form.get().has("corrects") && !form.get().has("temperature") && !form.get().has("void");
    Form sent = form.get().has("void") ? form.get().without("temperature") : form.get();
    EntryForm entry = new EntryForm(sent, desk.zone(), desk.kitchen().now());
    Incoming row = entry.row("");
    List<String> faults =
        isBlankCorrection
            ? List.of(visitor.say("day.correct.blank"))
            : EntryForm.faults(row, visitor);
    List<Question> asked =
        faults.isEmpty() ? RoundDoubt.asked(placeOf(sent), row, desk, visitor) : List.of();
    if (faults.isEmpty() && !Question.isOpen(asked, sent.answered())) {
      try {
        desk.kitchen().logbook().log(List.of(row), entry.once(READINGS));
        context.redirect(after(sent), HttpStatus.SEE_OTHER);
        return;
      } catch (Refused refused) {
        faults = EntryForm.faults(refused.problems(), desk, visitor);
      }
    }
    Map<String, String> fields = new HashMap<>(entry.fields());
    fields.put("form", READINGS);
    Filled again = new Filled(fields, faults, asked, sent.answered());
    answer(context, HttpStatus.UNPROCESSABLE_CONTENT, visitor, again);
  }

  private void takeRound(Context context, Visitor visitor, Form form) {
    RoundForm round = new RoundForm(desk, visitor, form);
    round.take();
    Visitor.remember(context, round.last());
    if (round.isDone()) {
      context.redirect(after(round.saved()), HttpStatus.SEE_OTHER);
      return;
    }
    DayView view = view(visitor, round.again(), round.told(), round.open());
    answer(context, HttpStatus.UNPROCESSABLE_CONTENT, visitor, view);
  }

  /** Back to the place that was read, or whose reading was corrected. */
  private String after(Form form) {
    String place = placeOf(form);
    return place.isEmpty() ? ADDRESS : after(List.of(place));
  }

  private static String after(List<String> places) {
    String saved =
        places.stream()
            .map(place -> SAVED + "=" + URLEncoder.encode(place, StandardCharsets.UTF_8))
            .collect(Collectors.joining("&"));
    return ADDRESS + "?" + saved + "#" + DayView.at(places.get(places.size() - 1));
  }

  /** The place that was read, or whose reading is corrected; blank where that is not of today. */
  private String placeOf(Form form) {
    return form.has("corrects")
        ? placeOf(form.text("corrects"), desk.kitchen().days().day(desk.kitchen().days().today()))
            .orElse("")
        : form.text("place");
  }

  private static Optional<String> placeOf(String reading, Day day) {
    return Stream.concat(day.round().stream(), day.others().stream())
        .filter(
            place ->
                Stream.concat(place.readings().stream(), place.idle().stream())
                    .anyMatch(read -> read.written().id().text().equals(reading)))
        .map(PlaceRound::name)
        .findFirst();
  }
}
