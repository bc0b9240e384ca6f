package chillwright.web.pages;

import chillwright.core.kitchen.KnownFood;
import chillwright.core.kitchen.KnownPlace.Kind;
import chillwright.core.log.Incoming;
import chillwright.core.log.LotId;
import chillwright.core.log.Row;
import chillwright.core.log.Word;
import chillwright.service.Logbook;
import chillwright.service.NewLot;
import chillwright.service.OnceKey;
import chillwright.service.Refused;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Begins a batch on one screen, from a food made before, and splits it into containers. */
final class NewBatchPage {
  static final String ADDRESS = "/new-batch";

  private static final int MOST_CONTAINERS = 50;

  /** No kitchen is warmer: common practice, no source. */
  private static final double KITCHEN_CELSIUS = 40;

  /** The ways a batch comes into the kitchen, the commonest first. */
  private static final List<String> WORDS =
      List.of(
          Word.COOKED.text(),
          Word.PREPARED.text(),
          Word.RECEIVED.text(),
          Word.OPENED.text(),
          Word.FROZEN.text(),
          Word.CHILLED.text());

  private final Desk desk;

  NewBatchPage(Desk desk) {
    this.desk = desk;
  }

  void show(Context context) {
    Visitor visitor = desk.visitor(context);
    Map<String, String> fields = new HashMap<>();
    fields.put("entry", WORDS.get(0));
    fields.put("scale", visitor.scaleLetter());
    for (String field : List.of("food", "category", "portions")) {
      Optional.ofNullable(context.queryParam(field)).ifPresent(given -> fields.put(field, given));
    }
    answer(context, HttpStatus.OK, visitor, Filled.with(fields));
  }

  private void answer(Context context, HttpStatus status, Visitor visitor, Filled form) {
    Known known = new Known(desk.kitchen());
    NewBatchView view =
        new NewBatchView(
            form,
            known.foods(),
            known.categories(visitor.language()),
            WORDS,
            known.places(),
            known.containers(visitor.language()),
            known.food(form.given("food")).map(new AllergenNotes(visitor)::of).orElse(""));
    Frame frame = desk.frame(visitor, "page.new-batch", ADDRESS, List.of());
    desk.answer(context, status, Templates.PAGES.newBatch(frame, view));
  }

  void begin(Context context) {
    Optional<Form> sent = desk.form(context);
    if (sent.isEmpty()) {
      return;
    }
    Visitor visitor = desk.visitor(context);
    Map<String, String> fields = sent.get().all();
    List<String> faults = new ArrayList<>();
    remember(fields);
    fields.computeIfPresent("from", (field, typed) -> meant(typed));
    if (fields.getOrDefault("category", "").isEmpty()) {
      Optional<String> before = new Known(desk.kitchen()).category(sent.get().text("food"));
      before.ifPresent(category -> fields.put("category", category));
      if (before.isEmpty() && sent.get().text("from").isEmpty()) {
        faults.add(visitor.say("batch.category.missing"));
      }
    }
    OptionalInt containers = containers(sent.get().text("containers"));
    if (containers.isEmpty()) {
      faults.add(visitor.say("batch.containers.wrong"));
    }
    Instant now = desk.kitchen().now();
    Incoming probe = form(fields, now).row("made");
    faults.addAll(EntryForm.faults(probe, visitor));
    List<Question> asked = faults.isEmpty() ? asked(fields, (Row) probe, visitor) : List.of();
    if (faults.isEmpty() && !Question.isOpen(asked, sent.get().answered())) {
      try {
        int count = containers.getAsInt();
        LotId lot = store(fields, (Row) probe, count, now);
        String page = "/lots/" + lot;
        // The page of the batch has all of its parts, with their labels.
        context.redirect(
            count > 1 ? DividedNotice.on(page, parts(lot, count)) : page, HttpStatus.SEE_OTHER);
        return;
      } catch (Refused refused) {
        faults.addAll(EntryForm.faults(refused.problems(), desk, visitor));
      }
    }
    Filled again = new Filled(fields, faults, asked, sent.get().answered());
    answer(context, HttpStatus.UNPROCESSABLE_CONTENT, visitor, again);
  }

  private static List<LotId> parts(LotId batch, int count) {
    return IntStream.rangeClosed(1, count).mapToObj(i -> new LotId(batch + "-" + i)).toList();
  }

  /** What can hardly be of a batch, or what it must not be made of. */
  private List<Question> asked(Map<String, String> fields, Row batch, Visitor visitor) {
    List<String> from = batch.details().from().stream().map(LotId::text).toList();
    String category = fields.getOrDefault("category", "");
    Optional<Question> figure =
        batch
            .details()
            .temperature()
            .flatMap(given -> Doubts.tooHot(given, visitor))
            .or(() -> FrozenDoubt.ofNew(batch, visitor));
    return Stream.of(
            new NotForUse(desk, visitor).of(from).stream(),
            figure.stream(),
            CookedDoubt.of(batch, category, desk, visitor).stream())
        .flatMap(questions -> questions)
        .map(odd -> odd.about(List.of(fields.getOrDefault("lot", ""))))
        .toList();
  }

  /** Takes what the kitchen said of the food where the form says nothing. */
  private void remember(Map<String, String> fields) {
    Optional<KnownFood> known = new Known(desk.kitchen()).food(fields.getOrDefault("food", ""));
    if (known.isEmpty()) {
      return;
    }
    KnownFood food = known.get();
    // As the kitchen writes it, so that its lots stand together.
    fields.put("food", food.name());
    fill(fields, "category", Optional.of(food.category()));
    fill(fields, "place", food.place().filter(place -> mayStandIn(place, fields)));
    fill(fields, "container", food.container());
    if (food.portions().isPresent()) {
      fill(fields, "portions", Optional.of(Integer.toString(food.portions().getAsInt())));
    }
  }

  /**
   * Where the food is kept cold it does not stand yet while it is hot, nor where it is kept frozen
   * before somebody froze it.
   */
  private boolean mayStandIn(String place, Map<String, String> fields) {
    if (isHot(fields)) {
      return false;
    }
    boolean isFreezer =
        desk.kitchen().setUp().places().stream()
            .filter(known -> known.name().equals(place))
            .anyMatch(known -> known.kind() == Kind.FREEZER);
    return !isFreezer || fields.getOrDefault("entry", "").equals(Word.FROZEN.text());
  }

  /** Just cooked, or made and warmer than a kitchen. */
  private boolean isHot(Map<String, String> fields) {
    String word = fields.getOrDefault("entry", "");
    Incoming made = form(fields, desk.kitchen().now()).row("made");
    boolean isCool =
        made instanceof Row row
            && row.details()
                .temperature()
                .filter(read -> read.celsiusDegrees() > KITCHEN_CELSIUS)
                .isEmpty();
    return word.equals(Word.COOKED.text()) || (word.equals(Word.PREPARED.text()) && !isCool);
  }

  /** The codes of lots as they are written where they are known. */
  private String meant(String typed) {
    return Stream.of(typed.split("\\s+"))
        .map(code -> desk.kitchen().lots().meant(code).map(LotId::text).orElse(code))
        .collect(Collectors.joining(" "));
  }

  private static void fill(Map<String, String> fields, String name, Optional<String> usual) {
    if (fields.getOrDefault(name, "").isEmpty()) {
      usual.ifPresent(text -> fields.put(name, text));
    }
  }

  private static OptionalInt containers(String given) {
    if (given.isEmpty()) {
      return OptionalInt.of(1);
    }
    boolean isNumber = given.matches("\\d{1,2}") && !given.matches("0+");
    int count = isNumber ? Integer.parseInt(given) : 0;
    return count >= 1 && count <= MOST_CONTAINERS ? OptionalInt.of(count) : OptionalInt.empty();
  }

  private EntryForm form(Map<String, String> fields, Instant now) {
    Map<String, List<String>> all = new HashMap<>();
    fields.forEach((name, text) -> all.put(name, List.of(text)));
    return new EntryForm(new Form(all), desk.zone(), now);
  }

  private LotId store(Map<String, String> fields, Row probe, int containers, Instant now) {
    Logbook logbook = desk.kitchen().logbook();
    if (containers > 1 && fields.getOrDefault("portions", "").isEmpty()) {
      fields.put("portions", Integer.toString(containers));
    }
    EntryForm form = form(fields, now);
    Optional<OnceKey> once = form.once(ADDRESS);
    String code = fields.getOrDefault("lot", "");
    // A code that somebody chose must not be that of a lot there is: the batch would vanish in it.
    Set<LotId> fresh = LotId.isCode(code) ? Set.of(new LotId(code)) : Set.of();
    if (code.isEmpty()) {
      // Known by the same key, so that a form sent twice gets the same code.
      Optional<OnceKey> ofLot = once.map(key -> new OnceKey("lot-" + key.text(), key.bodyHash()));
      code = logbook.createLot(announced(probe), ofLot).lot().text();
    }
    List<Incoming> rows = new ArrayList<>();
    rows.add(form(ofBatch(fields, containers), now).row(code));
    if (containers > 1) {
      rows.addAll(split(fields, code, containers, now));
    }
    logbook.log(rows, fresh, once);
    return new LotId(code);
  }

  /** A batch that is split stands in none of the containers itself. */
  private static Map<String, String> ofBatch(Map<String, String> fields, int containers) {
    Map<String, String> own = new HashMap<>(fields);
    if (containers > 1) {
      own.keySet().removeAll(List.of("container", "depth"));
    }
    return own;
  }

  private static NewLot announced(Row probe) {
    return new NewLot(
        Optional.empty(),
        probe.details().food(),
        probe.details().category(),
        probe.details().from(),
        OptionalInt.empty(),
        Optional.empty());
  }

  /**
   * A lot for each container, and the portions that left the batch with them: then none is left.
   */
  private List<Incoming> split(
      Map<String, String> fields, String code, int containers, Instant now) {
    List<Incoming> rows = new ArrayList<>();
    List<Incoming> left = new ArrayList<>();
    int portions = Integer.parseInt(fields.get("portions"));
    String word = fields.get("entry");
    boolean isWarm = word.equals(Word.COOKED.text()) || word.equals(Word.PREPARED.text());
    for (int i = 1; i <= containers; i++) {
      Map<String, String> own = common(fields);
      int share = portions / containers + (i <= portions % containers ? 1 : 0);
      own.put("entry", isWarm ? Word.COOLING.text() : word);
      own.put("from", code);
      own.put("portions", share == 0 ? "" : Integer.toString(share));
      for (String same : List.of("place", "container", "depth", "scale")) {
        own.put(same, fields.getOrDefault(same, ""));
      }
      rows.add(form(own, now).row(code + "-" + i));
      if (share > 0) {
        Map<String, String> taken = common(fields);
        taken.put("entry", Word.PORTIONS.text());
        taken.put("portions", Integer.toString(share));
        taken.put("to", code + "-" + i);
        left.add(form(taken, now).row(code));
      }
    }
    rows.addAll(left);
    return rows;
  }

  private static Map<String, String> common(Map<String, String> fields) {
    Map<String, String> own = new HashMap<>();
    own.put("by", fields.getOrDefault("by", ""));
    own.put("when", fields.getOrDefault("when", ""));
    return own;
  }
}
