package chillwright.web.pages;

import chillwright.core.kitchen.KnownFood;
import chillwright.core.log.LotId;
import chillwright.paper.Label;
import chillwright.paper.LabelMaker;
import chillwright.paper.LabelSheets;
import chillwright.paper.LabelText;
import chillwright.paper.LabelText.Handling;
import chillwright.paper.Sheet;
import chillwright.service.LotView;
import io.javalin.http.Context;
import io.javalin.http.Header;
import io.javalin.http.HttpStatus;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/** Labels of one lot. */
public final class LabelsPdf {
  static final String ADDRESS = "/lots/{lot}/labels.pdf";
  static final String TYPE = "application/pdf";

  private final Desk desk;

  LabelsPdf(Desk desk) {
    this.desk = desk;
  }

  /** The sheets to choose from, by their keys. */
  public static List<String> sheets() {
    return Sheet.ALL.stream().map(Sheet::key).toList();
  }

  void answer(Context context) {
    Visitor visitor = desk.visitor(context);
    Optional<LotView> view = LotPage.view(desk, context, visitor);
    if (view.isEmpty()) {
      return;
    }
    Optional<Sheet> sheet = Sheet.ofKey(given(context, "sheet", Sheet.ALL.get(0).key()));
    int count = number(given(context, "count", "1"));
    int first = number(given(context, "from", "1"));
    boolean isRight =
        sheet.filter(s -> first >= 1 && first <= s.labels()).isPresent()
            && count >= 1
            && count <= LabelSheets.MOST;
    if (!isRight) {
      desk.fault(context, visitor, HttpStatus.BAD_REQUEST, "fault.sheet", LabelSheets.MOST);
      return;
    }
    LotId lot = view.get().state().lot();
    Label label = label(view.get(), visitor, desk.address(context) + "/lots/" + lot);
    byte[] pdf = LabelSheets.of(Collections.nCopies(count, label), sheet.get(), first);
    context.header(Header.CONTENT_DISPOSITION, "inline; filename=\"labels-" + lot + ".pdf\"");
    context.contentType(TYPE).result(pdf);
  }

  private Label label(LotView view, Visitor visitor, String address) {
    LabelMaker maker =
        new LabelMaker(
            new PaperWords(visitor.language()), desk.zone(), desk.kitchen().now(), visitor.scale());
    Optional<LabelMaker.Judged> judged =
        view.judged()
            .map(
                found ->
                    new LabelMaker.Judged(found.timeline(), found.ruleSet(), found.findings()));
    return maker.of(view.state(), judged, address, text(view, visitor));
  }

  private LabelText text(LotView view, Visitor visitor) {
    String food = view.state().food();
    ContentsText contents = new ContentsText(food, view.contents(), visitor);
    return new LabelText(
        contents.shortGap(),
        contents.allergens(),
        contents.ingredients(),
        desk.kitchen().setUp().food(food).map(LabelsPdf::handling).orElse(Handling.NONE),
        desk.kitchen().setUp().labelStatement());
  }

  private static Handling handling(KnownFood food) {
    return new Handling(food.container(), food.place(), food.reheating(), food.thawing());
  }

  private static String given(Context context, String name, String usual) {
    return Optional.ofNullable(context.queryParam(name))
        .map(String::strip)
        .filter(text -> !text.isEmpty())
        .orElse(usual);
  }

  /** The number so written; 0, which is never right, for anything else. */
  private static int number(String text) {
    return text.matches("\\d{1,4}") ? Integer.parseInt(text) : 0;
  }
}
