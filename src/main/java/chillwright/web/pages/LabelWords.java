package chillwright.web.pages;

import chillwright.core.kitchen.KnownFood;
import chillwright.paper.Label;
import chillwright.paper.LabelMaker;
import chillwright.paper.LabelRoom;
import chillwright.paper.LabelText;
import chillwright.paper.LabelText.Handling;
import chillwright.paper.LabelText.Inside;
import chillwright.paper.Sheet;
import chillwright.service.LotView;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Labels of lots in the words of the person who prints them, and how they fit the sheets. */
final class LabelWords {
  /** Parts differ little: in their codes, their portions and their places. */
  private static final int MOST_FITTED = 4;

  private final Desk desk;
  private final Visitor visitor;
  private final String address;

  /**
   * @param address under which phones reach this service
   */
  LabelWords(Desk desk, Visitor visitor, String address) {
    this.desk = desk;
    this.visitor = visitor;
    this.address = address;
  }

  Label of(LotView view, Inside inside) {
    LabelMaker maker =
        new LabelMaker(
            new PaperWords(visitor.language()), desk.zone(), desk.kitchen().now(), visitor.scale());
    Optional<LabelMaker.Judged> judged =
        view.judged()
            .map(
                found ->
                    new LabelMaker.Judged(
                        found.timeline(), found.ruleSet(), found.findings(), found.forecasts()));
    String page = address + "/lots/" + view.state().lot();
    return maker.of(view.state(), judged, page, text(view), inside);
  }

  private LabelText text(LotView view) {
    String food = view.state().food();
    ContentsText contents = new ContentsText(food, view.contents(), visitor);
    return new LabelText(
        contents.shortGap(),
        contents.allergens(),
        contents.ingredients(),
        desk.kitchen().setUp().food(food).map(LabelWords::handling).orElse(Handling.NONE),
        desk.kitchen().settings().name(),
        desk.kitchen().setUp().labelStatement());
  }

  private static Handling handling(KnownFood food) {
    return new Handling(
        food.container(), food.place(), food.reheating(), food.thawing(), food.roomDays());
  }

  /**
   * How the labels that a page offers first fit each sheet, and which of their letters cannot be
   * drawn: that of the whole lot, or where it was divided those of its first few parts.
   */
  LotPageView.Labels fit(LotView view, List<LotView> parts, Filled form) {
    List<Label> labels =
        parts.isEmpty()
            ? List.of(of(view, Inside.WHOLE))
            : parts.stream().limit(MOST_FITTED).map(part -> of(part, Inside.WHOLE)).toList();
    List<LotPageView.LabelSheet> sheets =
        Sheet.ALL.stream()
            .map(
                sheet ->
                    fit(
                        sheet.key(),
                        labels.stream()
                            .flatMap(label -> LabelRoom.leftOut(label, sheet).stream())
                            .distinct()
                            .toList()))
            .toList();
    String boxes =
        labels.stream()
            .flatMap(label -> LabelRoom.undrawable(label).stream())
            .distinct()
            .collect(Collectors.joining(" "));
    return new LotPageView.Labels(
        sheets,
        visitor.language(),
        boxes.isEmpty() ? "" : visitor.say("labels.undrawable", boxes),
        missing(view),
        asWritten(view),
        new NotForUse(desk, visitor).labelled(view).stream().toList(),
        new LabelsMadeWords(desk, visitor).of(view.state().lot()),
        new LabelsMadeWords(desk, visitor).lacking(view),
        form);
  }

  /** Job 28: what is asked of a package that is sold, and is not on file here. */
  private List<String> missing(LotView view) {
    LabelText text = text(view);
    List<String> missing = new ArrayList<>();
    if (!text.gap().isEmpty()) {
      missing.add("label.what.allergens");
    }
    if (text.ingredients().isEmpty()) {
      missing.add("label.what.ingredients");
    }
    if (text.kitchen().isEmpty()) {
      missing.add("label.what.kitchen");
    }
    if (text.statement().isEmpty()) {
      missing.add("label.what.statement");
    }
    if (text.handling().roomDays().isEmpty() && isWithoutCold(view)) {
      missing.add("label.what.room-days");
    }
    return missing.stream().map(visitor::say).toList();
  }

  /** Nobody translates what a kitchen wrote: a guess at an allergen or a law's words can hurt. */
  private List<String> asWritten(LotView view) {
    LabelText text = text(view);
    List<String> written = new ArrayList<>();
    written.add("label.what.food");
    if (!view.contents().otherAllergens().isEmpty()) {
      written.add("label.what.other-allergens");
    }
    if (!text.ingredients().isEmpty()) {
      written.add("label.what.ingredients");
    }
    if (text.handling().reheating().isPresent()) {
      written.add("label.what.reheating");
    }
    if (text.handling().thawing().isPresent()) {
      written.add("label.what.thawing");
    }
    if (text.handling().container().isPresent()) {
      written.add("label.what.container");
    }
    if (text.statement().isPresent()) {
      written.add("label.what.statement");
    }
    written.add("label.what.net");
    return written.stream().map(visitor::say).toList();
  }

  private boolean isWithoutCold(LotView view) {
    return desk.kitchen()
        .library()
        .keepingList()
        .category(view.state().category())
        .filter(category -> !category.tcs())
        .isPresent();
  }

  private LotPageView.LabelSheet fit(String key, List<String> leftOut) {
    String name = visitor.say("sheet." + key);
    return leftOut.isEmpty()
        ? new LotPageView.LabelSheet(key, visitor.say("labels.all-fits", name), "")
        : new LotPageView.LabelSheet(
            key, name, visitor.say("labels.no-room", name, String.join("; ", leftOut)));
  }
}
