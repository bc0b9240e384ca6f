package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.kitchen.LabelsMade;
import chillwright.core.log.LotId;
import chillwright.logfile.SaidTime.Toward;
import chillwright.paper.Label;
import chillwright.paper.LabelRoom;
import chillwright.paper.LabelSheets;
import chillwright.paper.LabelText.Inside;
import chillwright.paper.Sheet;
import chillwright.print.Language;
import chillwright.service.Kitchen;
import chillwright.service.LotView;
import io.javalin.http.Context;
import io.javalin.http.Header;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;

/** Labels of one lot, or of the parts it was divided into. */
public final class LabelsPdf {
  static final String ADDRESS = "/lots/{lot}/labels.pdf";
  static final String TYPE = "application/pdf";

  /** More than any lot has. */
  private static final int MOST_PORTIONS = 100_000;

  private static final String YES = "yes";
  private static final String SURE = "sure";
  private static final String POSTED = "posted";
  private static final List<String> MANY = List.of("lot", "parts", "portions");
  private static final Map<String, String> NAMES =
      Map.ofEntries(
          Map.entry("sheet", "labels.sheet"),
          Map.entry("many", "labels.many"),
          Map.entry("count", "labels.count"),
          Map.entry("each", "labels.each"),
          Map.entry("from", "labels.from"),
          Map.entry("leaves", "labels.leaves"),
          Map.entry("net", "labels.net"),
          Map.entry(POSTED, "labels.posted"),
          Map.entry(NetWords.OF, "labels.net-of"),
          Map.entry("language", "labels.language"),
          Map.entry(SURE, "labels.sure"));

  private final Desk desk;
  private final Lately lately = new Lately();

  LabelsPdf(Desk desk) {
    this.desk = desk;
  }

  /** The sheets to choose from, by their keys. */
  private static List<String> sheets() {
    return Sheet.ALL.stream().map(Sheet::key).toList();
  }

  void answer(Context context) {
    Visitor visitor = desk.visitor(context);
    Optional<LotView> view = LotPage.view(desk, context, visitor);
    if (view.isEmpty()) {
      return;
    }
    Parameters parameters = new Parameters(context, visitor, NAMES);
    Sheet sheet = Sheet.ofKey(parameters.choice("sheet", sheets(), sheets().get(0))).orElseThrow();
    int first = parameters.number("from", sheet.labels()).orElse(1);
    List<Wanted> wanted = wanted(view.get(), parameters, visitor);
    List<Label> labels = labels(wanted, parameters, visitor, context);
    Set<String> doubted = new LinkedHashSet<>();
    if (leaves(parameters)) {
      doubted.addAll(refuseToLeave(wanted, visitor, parameters));
      List<String> lost = noRoom(labels, sheet);
      if (!lost.isEmpty()) {
        String name = visitor.say("sheet." + sheet.key());
        parameters.refuse(visitor.say("labels.leaves-no-room", name, String.join("; ", lost)));
      }
    }
    if (!parameters.faults().isEmpty()) {
      String says = visitor.say("fault.sheet");
      Choice back = new Choice(LabelsForm.again(context), visitor.say("labels.back"));
      List<Choice> ways = new ArrayList<>(List.of(back));
      doubted.forEach(food -> ways.add(0, SetUpPage.describing(food, visitor)));
      desk.faults(context, visitor, HttpStatus.BAD_REQUEST, says, parameters.faults(), ways);
      return;
    }
    LotId lot = view.get().state().lot();
    Filled form = asked(wanted, context, visitor);
    if (Question.isOpen(form.asked(), form.answered())) {
      Frame frame = desk.frame(visitor, "lot.labels", "/lots/" + lot, List.of());
      HttpStatus asks = HttpStatus.UNPROCESSABLE_CONTENT;
      desk.answer(context, asks, Templates.PAGES.labels(frame, lot.text(), form));
      return;
    }
    byte[] document = LabelSheets.of(labels, sheet, first);
    note(wanted, parameters, context);
    context.header(Header.CONTENT_DISPOSITION, "inline; filename=\"labels-" + lot + ".pdf\"");
    context.contentType(TYPE).result(document);
  }

  /** Keeps what was made, where somebody asked to see it. */
  private void note(List<Wanted> wanted, Parameters parameters, Context context) {
    String address = context.path() + "?" + context.queryString();
    if (!Opening.isByHand(context) || !lately.isFirst(address, desk.kitchen().now())) {
      return;
    }
    Map<LotId, LabelsMade> made = new LinkedHashMap<>();
    for (LotView lot : wanted.stream().map(Wanted::lot).distinct().toList()) {
      int count = wanted.stream().filter(w -> w.lot().equals(lot)).mapToInt(Wanted::count).sum();
      made.put(
          lot.state().lot(),
          LabelsMade.of(desk.kitchen().now(), count, leaves(parameters), lot.contents()));
    }
    desk.kitchen().labels().note(made);
  }

  /** The address as a form, with the question of each lot on it that is not for use. */
  private Filled asked(List<Wanted> wanted, Context context, Visitor visitor) {
    NotForUse unfit = new NotForUse(desk, visitor);
    Form form = new Form(context.queryParamMap());
    return new Filled(
        form.without(SURE).all(),
        List.of(),
        wanted.stream()
            .map(Wanted::lot)
            .distinct()
            .flatMap(lot -> unfit.labelled(lot).stream())
            .toList(),
        form.answered());
  }

  /** Every label that is asked for; means nothing where the parameters have faults. */
  private List<Label> labels(
      List<Wanted> wanted, Parameters parameters, Visitor visitor, Context context) {
    NetWords net = NetWords.of(parameters, visitor, wanted.stream().map(Wanted::portions).toList());
    boolean leaves = leaves(parameters);
    Optional<LocalDate> posted = posted(wanted, parameters, visitor);
    Visitor reader = visitor.reading(language(parameters));
    LabelWords words = new LabelWords(desk, reader, desk.address(context));
    List<Label> labels = new ArrayList<>();
    for (Wanted one : wanted) {
      Inside inside = one.inside().with(net.over(one.portions()));
      Label label = words.of(one.lot(), leaves ? inside.leaving(posted) : inside);
      labels.addAll(Collections.nCopies(one.count(), label));
    }
    return labels;
  }

  /** The day it is posted; refused where it is over, or where a lot is not to be used by then. */
  private Optional<LocalDate> posted(List<Wanted> wanted, Parameters parameters, Visitor visitor) {
    LocalDate today = LocalDate.ofInstant(desk.kitchen().now(), desk.zone());
    Optional<LocalDate> posted = parameters.day(POSTED, today, Toward.AHEAD);
    if (posted.isPresent() && !leaves(parameters)) {
      parameters.refuse(visitor.say("labels.posted.stays"));
    }
    posted
        .filter(today::isAfter)
        .map(desk.times(visitor)::day)
        .ifPresent(day -> parameters.refuse(visitor.say("labels.posted.over", day)));
    for (LotView lot : wanted.stream().map(Wanted::lot).distinct().toList()) {
      lastDay(lot)
          .filter(last -> posted.filter(last::isBefore).isPresent())
          .map(desk.times(visitor)::day)
          .ifPresent(
              last ->
                  parameters.refuse(
                      visitor.say("labels.posted.late", lot.state().lot().text(), last)));
    }
    return posted;
  }

  /** The last day of safety of a lot that is not frozen. */
  private static Optional<LocalDate> lastDay(LotView lot) {
    boolean isOfSafety =
        lot.judged().filter(of -> !of.timeline().food().category().daysAreQuality()).isPresent();
    return lot.state()
        .standing()
        .filter(standing -> isOfSafety)
        .map(LotState.Standing::keeping)
        .flatMap(keeping -> keeping.dateMarkLastDay().or(keeping::chilledLastDay));
  }

  /**
   * Food that is not for use, or of which nothing is logged, or whose allergens are in doubt, gets
   * no label to be sold with.
   *
   * @return the foods in doubt
   */
  private Set<String> refuseToLeave(List<Wanted> wanted, Visitor visitor, Parameters parameters) {
    Map<String, Set<String>> doubts = new LinkedHashMap<>();
    Set<String> foods = new LinkedHashSet<>();
    for (LotView lot : wanted.stream().map(Wanted::lot).distinct().toList()) {
      String code = lot.state().lot().text();
      if (!lot.state().isOnHand() || !NotForUse.reasons(lot, desk.kitchen().now()).isEmpty()) {
        parameters.refuse(visitor.say("labels.leaves-unfit", code));
      }
      if (lot.state().standing().isEmpty()) {
        parameters.refuse(visitor.say("labels.leaves-nothing", code));
      }
      LotPageView.Contents inside =
          new ContentsText(lot.state().food(), lot.contents(), visitor).shown();
      Stream.of(inside.gap(), inside.warning())
          .filter(doubt -> !doubt.isEmpty())
          .forEach(
              doubt -> {
                doubts.computeIfAbsent(doubt, d -> new LinkedHashSet<>()).add(code);
                foods.add(lot.state().food());
              });
    }
    doubts.forEach(
        (doubt, codes) ->
            parameters.refuse(visitor.say("labels.leaves-doubt", String.join(", ", codes), doubt)));
    return foods;
  }

  private static boolean leaves(Parameters parameters) {
    return parameters.choice("leaves", List.of(YES), "").equals(YES);
  }

  private static Optional<String> language(Parameters parameters) {
    List<String> tags = Stream.of(Language.values()).map(Language::tag).toList();
    return Optional.of(parameters.choice("language", tags, ""));
  }

  /** A buyer has nothing but the label: what it must say is never left out silently. */
  private static List<String> noRoom(List<Label> labels, Sheet sheet) {
    return labels.stream()
        .distinct()
        .flatMap(label -> LabelRoom.leftOut(label, sheet).stream())
        .distinct()
        .toList();
  }

  /** So many labels of a lot that are all alike. */
  private record Wanted(LotView lot, Inside inside, int count) {
    /** Under each label; empty where nobody said. */
    OptionalInt portions() {
      return inside.isWhole() ? lot.state().portions().left() : inside.portions();
    }
  }

  /** What is asked for; where it cannot be had, that is told and the answer means nothing. */
  private List<Wanted> wanted(LotView lot, Parameters parameters, Visitor visitor) {
    String many = parameters.choice("many", MANY, MANY.get(0));
    int count = parameters.number("count", LabelSheets.MOST).orElse(1);
    Optional<Integer> each = parameters.number("each", MOST_PORTIONS);
    List<Wanted> wanted =
        switch (many) {
          case "parts" ->
              parts(desk.kitchen(), lot).stream()
                  .map(part -> new Wanted(part, inside(each, count), count))
                  .toList();
          case "portions" -> containers(lot, each.orElse(1), count);
          default -> List.of(new Wanted(lot, inside(each, count), count));
        };
    int all = wanted.stream().mapToInt(Wanted::count).sum();
    if (all == 0) {
      String none = many.equals("parts") ? "labels.no-parts" : "labels.no-portions";
      parameters.refuse(visitor.say(none));
    } else if (all > LabelSheets.MOST) {
      parameters.refuse(visitor.say("labels.too-many", all, LabelSheets.MOST));
    }
    return wanted;
  }

  private static Inside inside(Optional<Integer> each, int count) {
    return each.map(Inside::of).orElse(count == 1 ? Inside.WHOLE : Inside.SOME);
  }

  /** As many containers as the portions fill; the last holds what remains. */
  private static List<Wanted> containers(LotView lot, int each, int count) {
    int left = lot.state().portions().left().orElse(0);
    List<Wanted> wanted = new ArrayList<>();
    if (left >= each) {
      wanted.add(new Wanted(lot, Inside.of(each), left / each * count));
    }
    if (left % each > 0) {
      wanted.add(new Wanted(lot, Inside.of(left % each), count));
    }
    return wanted;
  }

  /** Lots on hand that are nothing but a part of that lot, or a part of such a part. */
  static List<LotView> parts(Kitchen kitchen, LotView lot) {
    return everyPart(kitchen, lot).stream().filter(view -> view.state().isOnHand()).toList();
  }

  /** The same, on hand or not, each after what it was divided from. */
  static List<LotView> everyPart(Kitchen kitchen, LotView lot) {
    Set<LotId> same = new HashSet<>(Set.of(lot.state().lot()));
    List<LotView> parts = new ArrayList<>();
    for (LotId made : lot.descendants()) {
      Optional<LotView> part = kitchen.lots().lot(made);
      part.filter(view -> same.containsAll(view.sources()))
          .filter(view -> view.state().food().equals(lot.state().food()))
          .ifPresent(
              view -> {
                same.add(made);
                parts.add(view);
              });
    }
    return parts;
  }
}
