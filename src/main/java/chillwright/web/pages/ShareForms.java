package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.log.CountedPart.Count;
import chillwright.core.log.EntryId;
import chillwright.core.log.How;
import chillwright.core.log.Incoming;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Phase;
import chillwright.core.log.PutBack;
import chillwright.core.log.Row;
import chillwright.core.log.Word;
import chillwright.core.rules.OpenCooling;
import chillwright.service.LotView;
import chillwright.service.OnceKey;
import chillwright.service.Refused;
import chillwright.service.Written;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Divides a lot into parts, or makes a new one of several: rows of the log like any others, all or
 * none of them stored.
 */
final class ShareForms {
  static final String PARTS = "/lots/{lot}/parts";
  static final String COMBINED = "/lots/{lot}/combined";
  static final String COUNTS = "/lots/{lot}/counts";
  static final String BACK = "/lots/{lot}/put-back";
  static final String MORE = "/lots/{lot}/counted-more";

  private static final int MOST_PARTS = 50;
  private static final Set<String> MADE = Set.of(Word.COOKED.text(), Word.PREPARED.text());

  private final Desk desk;
  private final LotPage page;

  ShareForms(Desk desk, LotPage page) {
    this.desk = desk;
    this.page = page;
  }

  /**
   * Rows to be logged, the lots that are handed on and those that begin with them, and what is
   * wrong with the form.
   */
  private static final class Told {
    private final Visitor visitor;
    final List<Incoming> rows = new ArrayList<>();
    final Set<String> used = new LinkedHashSet<>();
    final Set<LotId> fresh = new HashSet<>();
    final Set<String> faults = new LinkedHashSet<>();
    long moreThanLogged;
    Optional<String> next = Optional.empty();

    Told(Visitor visitor) {
      this.visitor = visitor;
    }

    void add(Incoming row) {
      rows.add(row);
      faults.addAll(EntryForm.faults(row, visitor));
    }
  }

  /** Reads one of the forms. */
  private interface Reading {
    Told read(Form form, LotState lot, Visitor visitor);
  }

  /** A lot for each part, and the portions that left this one with them. */
  void divide(Context context) {
    take(context, "parts", this::parts);
  }

  /** One lot of several, and the portions that left each of them. */
  void combine(Context context) {
    take(context, "combined", this::combined);
  }

  /** What a count of the stock found, as a fact of the log: portions missing leave the lot. */
  void count(Context context) {
    take(context, "counts", this::counts);
  }

  /** A part that was made by mistake goes back into the lot it was divided from. */
  void putBack(Context context) {
    take(context, "back", this::back);
  }

  /** Counts of a part and of the lot it came from are corrected together. */
  void countMore(Context context) {
    // What a count becomes is reckoned from what it is: nobody else corrects one between.
    synchronized (this) {
      take(context, "more", this::more);
    }
  }

  private void take(Context context, String which, Reading reading) {
    Optional<Form> form = desk.form(context);
    if (form.isEmpty()) {
      return;
    }
    Visitor visitor = desk.visitor(context);
    Optional<LotView> view = LotPage.view(desk, context, visitor);
    if (view.isEmpty()) {
      return;
    }
    Told told = reading.read(form.get(), view.get().state(), visitor);
    Optional<OnceKey> once = form.get().once(context.path());
    boolean isRepeat = once.filter(desk.kitchen().logbook()::isAnswered).isPresent();
    List<Question> asked = told.faults.isEmpty() ? asked(told, form.get(), visitor) : List.of();
    boolean isClear = told.faults.isEmpty() && !Question.isOpen(asked, form.get().answered());
    if (isRepeat || isClear) {
      try {
        Written written = desk.kitchen().logbook().log(told.rows, told.fresh, once);
        context.redirect(after(view.get().state(), told, written), HttpStatus.SEE_OTHER);
        return;
      } catch (Refused refused) {
        told.faults.addAll(EntryForm.faults(refused.problems(), desk, visitor));
      }
    }
    Map<String, String> fields = form.get().all();
    fields.put("form", which);
    fields.put("from", form.get().words("from"));
    Filled again = new Filled(fields, List.copyOf(told.faults), asked, form.get().answered());
    page.refuse(context, visitor, view.get(), again);
  }

  private List<Question> asked(Told told, Form form, Visitor visitor) {
    List<Question> unfit = new NotForUse(desk, visitor).of(told.used);
    Row first = (Row) told.rows.get(0);
    return Stream.concat(
            unfit.stream(),
            CookedDoubt.of(first, form.text("category"), desk, visitor)
                .map(odd -> odd.about(told.used))
                .stream())
        .toList();
  }

  /** Of several parts the page of their source tells: it lists them all. */
  private static String after(LotState lot, Told told, Written written) {
    if (told.next.isPresent()) {
      return told.next.get();
    }
    String page = told.fresh.size() > 1 ? "/lots/" + lot.lot() : begun(written);
    boolean isDivided = !told.fresh.isEmpty() && told.used.size() == 1;
    if (told.moreThanLogged > 0) {
      return CountedMore.on(page, told.moreThanLogged);
    }
    return isDivided ? DividedNotice.on(page, told.fresh) : page;
  }

  /** The page of the first lot that began. */
  private static String begun(Written written) {
    LogEntry first = written.entries().get(0);
    return written.lots().stream()
        .filter(lot -> lot.timeline().own().stream().anyMatch(e -> e.id().equals(first.id())))
        .findFirst()
        .map(lot -> "/lots/" + lot.state().lot() + "?done=" + first.id())
        .orElse(LotsPages.ON_HAND);
  }

  private Told parts(Form form, LotState lot, Visitor visitor) {
    Told told = new Told(visitor);
    told.used.add(lot.lot().text());
    OptionalInt count = number(form.has("parts") ? form.text("parts") : "1", MOST_PARTS);
    OptionalInt each = number(form.text("portions"), Integer.MAX_VALUE);
    Optional<Phase> word = LotActs.ofPart(lot);
    if (word.isEmpty()) {
      told.faults.add(visitor.say("share.parts.not-now"));
    }
    if (count.isEmpty()) {
      told.faults.add(visitor.say("share.parts.wrong", MOST_PARTS));
    }
    boolean isCounted = lot.portions().left().isPresent();
    if (each.isEmpty() && (isCounted || form.has("portions"))) {
      told.faults.add(visitor.say("share.portions.missing"));
    }
    if (!told.faults.isEmpty()) {
      return told;
    }
    List<Incoming> left = new ArrayList<>();
    for (LotId part : desk.kitchen().lots().freeCodes(lot.lot(), count.getAsInt())) {
      Map<String, String> own = common(form);
      own.put("entry", word.get().word());
      own.put("from", lot.lot().text());
      own.put("food", form.text("food").equals(lot.food()) ? "" : form.text("food"));
      own.put("portions", form.text("portions"));
      for (String same : List.of("place", "container", "depth", "scale")) {
        own.put(same, form.text(same));
      }
      told.fresh.add(part);
      told.add(row(own, part.text()));
      if (each.isPresent()) {
        left.add(taken(form, lot.lot().text(), form.text("portions"), part));
      }
    }
    left.forEach(told::add);
    return told;
  }

  /** The part, and nothing else, is put back into the lot it was divided from. */
  private Told back(Form form, LotState lot, Visitor visitor) {
    Told told = new Told(visitor);
    Optional<PutBack> back =
        desk.kitchen().lots().putBacks(lot.lot()).stream()
            .filter(found -> found.part().equals(lot.lot()))
            .findFirst();
    if (back.isEmpty()) {
      String why =
          Optional.ofNullable(desk.kitchen().lots().notPutBack(lot.lot()).get(lot.lot()))
              .map(refusal -> "share.back.not." + refusal.key())
              .orElse("share.back.not.no-part");
      told.faults.add(visitor.say(why));
      return told;
    }
    String part = lot.lot().text();
    LotId whole = back.get().whole();
    NotForUse unfit = new NotForUse(desk, visitor);
    if (unfit.is(lot.lot()) && !unfit.is(whole)) {
      told.faults.add(visitor.say("share.back.not.unfit"));
      return told;
    }
    told.next = Optional.of(DividedNotice.onBack(whole, lot.lot()));
    told.add(taken(form, part, Integer.toString(back.get().portions()), whole));
    String note = visitor.say("share.back.note", part);
    for (EntryId wrong : back.get().rows()) {
      Map<String, String> voided = common(form);
      voided.put("entry", Word.CORRECTION.text());
      voided.put("corrects", wrong.text());
      voided.put("note", note);
      told.add(row(voided, whole.text()));
    }
    back.get().rowsTakenOver(note).forEach(told::add);
    return told;
  }

  /** What was found beyond the log of a lot, in all the counts that tell of it. */
  private Told more(Form form, LotState lot, Visitor visitor) {
    Told told = new Told(visitor);
    MendedCounts mended = MendedCounts.of(desk.kitchen().lots(), form, lot, visitor);
    told.next = Optional.of(mended.next());
    told.faults.addAll(mended.faults());
    told.used.addAll(mended.givers());
    for (Count count : mended.counts()) {
      Map<String, String> own = common(form);
      own.put("entry", Word.CORRECTION.text());
      own.put("corrects", count.entry().text());
      own.put("portions", count.portions() == 0 ? "" : Integer.toString(count.portions()));
      own.put("note", mended.note());
      told.add(row(own, count.lot().text()));
    }
    return told;
  }

  private Told counts(Form form, LotState lot, Visitor visitor) {
    Told told = new Told(visitor);
    Optional<Long> found = counted(form.text("found"));
    if (found.isEmpty()) {
      told.faults.add(visitor.say("share.count.wrong"));
      return told;
    }
    // A count is no act: it would close such a lot, or settle what is owed to it.
    if (LotActs.isOwed(lot, desk.kitchen().now())) {
      told.faults.add(visitor.say("share.count.owed"));
      return told;
    }
    OptionalInt left = lot.portions().left();
    Map<String, String> own = common(form);
    Object logged = left.isPresent() ? left.getAsInt() : "-";
    own.put("note", visitor.say("share.count.note", found.get(), logged));
    long missing = left.orElse(0) - found.get();
    told.moreThanLogged = -missing;
    if (missing > 0) {
      own.put("entry", Word.PORTIONS.text());
      own.put("how", How.COUNTED.text());
      own.put("portions", Long.toString(missing));
    } else {
      own.put("entry", Word.ACTION.text());
    }
    told.add(row(own, lot.lot().text()));
    return told;
  }

  private Told combined(Form form, LotState lot, Visitor visitor) {
    Told told = new Told(visitor);
    Set<String> codes = new LinkedHashSet<>(List.of(lot.lot().text()));
    codes.addAll(List.of((form.words("from") + " " + form.text("more")).strip().split("[\\s,]+")));
    codes.remove("");
    told.used.addAll(codes);
    if (codes.size() < 2) {
      told.faults.add(visitor.say("share.combined.one"));
    }
    if (codes.size() > MOST_PARTS) {
      told.faults.add(visitor.say("share.combined.many", MOST_PARTS));
      return told;
    }
    if (!MADE.contains(form.text("entry"))) {
      told.faults.add(visitor.say("share.combined.word"));
    }
    codes.stream()
        .filter(code -> !isCookedAgain(form) && isCooling(code))
        .forEach(code -> told.faults.add(visitor.say("share.combined.cooling", code)));
    LotId made = desk.kitchen().lots().freeCode();
    List<Incoming> left = new ArrayList<>();
    long sum = 0;
    for (String code : codes) {
      Optional<String> portions = portions(form, code);
      portions.ifPresent(count -> left.add(taken(form, code, count, made)));
      sum += portions.flatMap(ShareForms::counted).orElse(0L);
    }
    Map<String, String> own = common(form);
    List.of("entry", "temperature", "scale", "food", "category", "place")
        .forEach(same -> own.put(same, form.text(same)));
    own.put("from", String.join(" ", codes));
    String given = form.text("made");
    own.put("portions", given.isEmpty() && sum > 0 ? Long.toString(sum) : given);
    told.fresh.add(made);
    told.add(row(own, made.text()));
    left.forEach(told::add);
    return told;
  }

  /** What is taken of a lot: what the form says, else all that is left of one that is counted. */
  private Optional<String> portions(Form form, String code) {
    String given = form.text("taken-" + code);
    if (!given.isEmpty()) {
      return Optional.of(given);
    }
    return LotId.isCode(code)
        ? desk.kitchen()
            .lots()
            .state(new LotId(code))
            .flatMap(lot -> lot.portions().left().stream().boxed().findFirst())
            .filter(left -> left > 0)
            .map(Object::toString)
        : Optional.empty();
  }

  private static Optional<Long> counted(String count) {
    return count.matches("\\d{1,7}") ? Optional.of(Long.parseLong(count)) : Optional.empty();
  }

  /** Only a temperature tells that. */
  private static boolean isCookedAgain(Form form) {
    return form.text("entry").equals(Word.COOKED.text()) && form.has("temperature");
  }

  /** Its clock runs on in whatever it is put into, and that lot would not tell. */
  private boolean isCooling(String code) {
    return LotId.isCode(code)
        && desk.kitchen()
            .lots()
            .lot(new LotId(code))
            .flatMap(LotView::judged)
            .filter(found -> OpenCooling.of(found.timeline(), found.ruleSet()).isPresent())
            .isPresent();
  }

  private Incoming taken(Form form, String lot, String portions, LotId into) {
    Map<String, String> taken = common(form);
    taken.put("to", into.text());
    taken.put("entry", Word.PORTIONS.text());
    taken.put("portions", portions);
    return row(taken, lot);
  }

  private static Map<String, String> common(Form form) {
    Map<String, String> own = new HashMap<>();
    own.put("by", form.text("by"));
    own.put("when", form.text("when"));
    return own;
  }

  private Incoming row(Map<String, String> fields, String lot) {
    Map<String, List<String>> all = new HashMap<>();
    fields.forEach((name, text) -> all.put(name, List.of(text)));
    Instant now = desk.kitchen().now();
    return new EntryForm(new Form(all), desk.zone(), now).row(lot);
  }

  private static OptionalInt number(String given, int most) {
    boolean isNumber = given.matches("\\d{1,7}");
    int number = isNumber ? Integer.parseInt(given) : 0;
    return number >= 1 && number <= most ? OptionalInt.of(number) : OptionalInt.empty();
  }
}
