package chillwright.web.pages;

import chillwright.core.log.Incoming;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Problem;
import chillwright.core.log.Problem.Where;
import chillwright.core.log.Problem.Where.InField;
import chillwright.core.log.Row;
import chillwright.core.log.Word;
import chillwright.service.LotView;
import chillwright.service.Refused;
import chillwright.service.Written;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * An entry that a form makes for a lot, and for each other part of its batch that is ticked: every
 * one is asked about by itself, and all or none of them are stored.
 */
final class SentEntry {
  /** What is told of one lot alone. */
  private static final List<String> OF_ONE =
      List.of("air", "portions", "to", "from", "corrects", "food", "category");

  private final Desk desk;
  private final Visitor visitor;
  private final Form form;
  private final List<OfLot> lots = new ArrayList<>();
  private final List<String> also = new ArrayList<>();
  private final List<String> wrong = new ArrayList<>();

  /** One of the lots, with what the form says of it. */
  private record OfLot(LotView view, EntryForm form, Incoming row) {
    String code() {
      return view.state().lot().text();
    }
  }

  SentEntry(Desk desk, Visitor visitor, LotView view, Form sent) {
    this.desk = desk;
    this.visitor = visitor;
    this.form = LotActs.asEntry(sent);
    OtherParts parts = new OtherParts(desk.kitchen(), view);
    List<String> asked = OtherParts.asked(form);
    if (asked.isEmpty() || view.state().isOnHand()) {
      add(view, form);
    }
    boolean isOfOne = parts.areAlone() && asked.size() == 1;
    for (String code : asked) {
      Optional<LotView> part = parts.part(code);
      part.ifPresent(found -> add(found, isOfOne ? read(code) : ofPart(code)));
      also.add(code);
      if (part.isEmpty()) {
        wrong.add(visitor.say("entry.also.other", code));
      }
    }
    if (isOfOne) {
      return;
    }
    if (isCounted() && parts.areAlone()) {
      wrong.add(visitor.say("entry.also.one"));
    } else if (!asked.isEmpty() && isCounted()) {
      wrong.add(visitor.say("entry.also.taken"));
    } else if (!asked.isEmpty() && (form.has("portions") || form.has("to"))) {
      wrong.add(visitor.say("entry.also.portions"));
    }
  }

  private boolean isCounted() {
    return form.text("entry").equals(Word.PORTIONS.text());
  }

  private void add(LotView view, Form own) {
    EntryForm entry = new EntryForm(ColdPlace.chosen(own), desk.zone(), desk.kitchen().now());
    String pointer = lots.isEmpty() ? "" : "/" + lots.size();
    lots.add(new OfLot(view, entry, entry.row(view.state().lot().text(), pointer)));
  }

  private Form read(String code) {
    return form.with("temperature", form.text(OtherParts.temperature(code)));
  }

  /** The same without what was read or counted in the other lot. */
  private Form ofPart(String code) {
    Form own = read(code);
    for (String field : OF_ONE) {
      own = own.without(field);
    }
    return own.has("temperature") ? own : own.without("probe");
  }

  /** What is wrong with it, of each lot. */
  List<String> faults() {
    Map<String, List<String>> faults = new LinkedHashMap<>();
    if (!wrong.isEmpty() && isCounted()) {
      return List.copyOf(wrong); // What else is missing is missing of one lot alone.
    }
    for (OfLot lot : lots) {
      EntryForm.faults(lot.row(), visitor).forEach(fault -> put(faults, fault, lot.code()));
    }
    return Stream.concat(wrong.stream(), told(faults).stream()).toList();
  }

  /** Why it was not stored. */
  List<String> faults(Refused refused) {
    Map<String, List<String>> faults = new LinkedHashMap<>();
    for (Problem problem : refused.problems()) {
      String says = desk.times(visitor).retold(visitor.language().fault(problem.says()));
      put(faults, says, lots.get(lotOf(problem.where())).code());
    }
    return told(faults);
  }

  private int lotOf(Where where) {
    String pointer = where instanceof InField field ? field.pointer() : "";
    int last = lots.size() - 1;
    while (last > 0 && !(pointer + "/").startsWith("/" + last + "/")) {
      last--;
    }
    return last;
  }

  private static <T> void put(Map<T, List<String>> all, T one, String code) {
    all.computeIfAbsent(one, k -> new ArrayList<>()).add(code);
  }

  /** What is the same for several lots is told once. */
  private List<String> told(Map<String, List<String>> faults) {
    return faults.entrySet().stream().map(f -> of(f.getValue(), f.getKey())).toList();
  }

  private String of(List<String> codes, String says) {
    return lots.size() == 1 ? says : visitor.say("entry.of-lots", String.join(", ", codes), says);
  }

  /** What is asked before it is stored; nothing is asked of what has faults. */
  List<Question> asked() {
    Map<Question, List<String>> asked = new LinkedHashMap<>();
    for (OfLot lot : lots) {
      if (lot.row() instanceof Row row) {
        asked(lot, row).forEach(question -> put(asked, question, lot.code()));
      }
    }
    return asked.entrySet().stream().map(one -> of(one.getValue(), one.getKey())).toList();
  }

  /** A tick answers for these lots and for no other. */
  private Question of(List<String> codes, Question question) {
    return new Question(question.name(), of(codes, question.says()), question.way()).about(codes);
  }

  private List<Question> asked(OfLot lot, Row row) {
    Optional<Question> unfit = new NotForUse(desk, visitor).before(row, lot.view());
    Optional<Question> twice =
        lot.form()
            .twice()
            .map(time -> Question.of("twice", row.when(), visitor.say("entry.doubt.twice", time)));
    List<Question> odd = new Doubts(lot.view(), readings(lot.view()), desk, visitor).of(row);
    Optional<Question> labels = new LabelDoubt(desk, visitor).before(row, lot.view());
    Optional<Question> cold = ReheatDoubt.of(row, lot.view().state().lot(), desk, visitor);
    return Stream.of(unfit.stream(), labels.stream(), cold.stream(), twice.stream(), odd.stream())
        .flatMap(all -> all)
        .toList();
  }

  private static List<LogEntry> readings(LotView view) {
    return view.judged().map(judged -> judged.timeline().entries()).orElse(List.of()).stream()
        .filter(entry -> entry.temperature().isPresent())
        .toList();
  }

  /**
   * Stores a row for each lot, once however often the form is sent.
   *
   * @return where the answer leads: the page that it was sent from in passing, or else the lot
   * @throws Refused with every fault; then nothing is stored
   */
  String store(String address, String page) {
    List<Incoming> rows = lots.stream().map(OfLot::row).toList();
    Written written = desk.kitchen().logbook().log(rows, form.once(address));
    LogEntry first = written.entries().get(0);
    if (form.text("back").equals(NowPage.ADDRESS)) {
      return OtherParts.on(NowPage.after(lots.get(0).code(), first), also);
    }
    return LotsPages.isList(form.text("back"))
        ? TakenNotice.on(form.text("back"), lots.get(0).code(), first)
        : OtherParts.on(page + "?done=" + first.id(), also);
  }

  /** The form with what was filled in, to be shown again. */
  Filled again(List<String> faults, List<Question> asked) {
    return new Filled(fields(form.all()), faults, asked, form.answered());
  }

  /** What a phone had kept, with what is wrong with it or asked about it. */
  Filled kept(Map<String, String> blank, Instant now) {
    Map<String, String> fields = new LinkedHashMap<>(blank);
    fields.putAll(KeptEntry.fields(form, desk.zone(), now));
    List<String> faults = faults();
    return new Filled(
        fields(fields), faults, faults.isEmpty() ? asked() : List.of(), form.answered());
  }

  private Map<String, String> fields(Map<String, String> first) {
    Map<String, String> fields = new LinkedHashMap<>(first);
    fields.put("also", String.join(" ", also));
    return fields;
  }
}
