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

/** Labels of lots in the words of the person who prints them, and how they fit the sheets. */
final class LabelWords {
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
    return new Handling(food.container(), food.place(), food.reheating(), food.thawing());
  }

  /** How the label of a whole lot fits each sheet, and which of its letters cannot be drawn. */
  LotPageView.Labels fit(LotView view) {
    Label label = of(view, Inside.WHOLE);
    List<LotPageView.LabelSheet> sheets =
        Sheet.ALL.stream().map(sheet -> fit(sheet.key(), LabelRoom.leftOut(label, sheet))).toList();
    String boxes = String.join(" ", LabelRoom.undrawable(label));
    return new LotPageView.Labels(
        sheets,
        visitor.language(),
        boxes.isEmpty() ? "" : visitor.say("labels.undrawable", boxes),
        missing(text(view)));
  }

  /** Job 28: what is asked of a package that is sold, and is not on file here. */
  private List<String> missing(LabelText text) {
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
    return missing.stream().map(visitor::say).toList();
  }

  private LotPageView.LabelSheet fit(String key, List<String> leftOut) {
    String name = visitor.say("sheet." + key);
    return leftOut.isEmpty()
        ? new LotPageView.LabelSheet(key, visitor.say("labels.all-fits", name), "")
        : new LotPageView.LabelSheet(
            key, name, visitor.say("labels.no-room", name, String.join("; ", leftOut)));
  }
}
