package chillwright.web.pages;

import chillwright.core.learning.MethodRecord;
import chillwright.print.CoolingMethodText;
import chillwright.service.CoolingMethods;
import chillwright.service.CoolingMethods.Asked;
import chillwright.service.CoolingMethods.Shown;
import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;

/** What the kitchen's own coolings show of the ways it cools. */
final class CoolingMethodsPage {
  static final String ADDRESS = "/cooling-methods";

  private static final Map<String, String> NAMES =
      Map.of(
          "from",
          "record.from",
          "to",
          "record.to",
          "food",
          "batch.food",
          "container",
          "entry.container");

  private final Desk desk;

  CoolingMethodsPage(Desk desk) {
    this.desk = desk;
  }

  /** The address of the page for one food. */
  static String of(String food) {
    return ADDRESS + "?food=" + encoded(food);
  }

  void show(Context context) {
    Visitor visitor = desk.visitor(context);
    LocalDate today = LocalDate.ofInstant(desk.kitchen().now(), desk.zone());
    Parameters parameters = new Parameters(context, visitor, NAMES);
    Parameters.Period asked =
        parameters.period(today.minusDays(CoolingMethods.USUAL.toDays()), today);
    LocalDate from = asked.from();
    LocalDate to = asked.to();
    Optional<String> food = given(context, "food");
    Optional<String> container = given(context, "container");
    Shown shown =
        desk.kitchen()
            .coolingMethods()
            .find(
                new Asked(
                    food,
                    container,
                    Optional.of(start(from)),
                    Optional.of(start(to.plusDays(1)).minusMillis(1))));
    CoolingMethodText text = new CoolingMethodText(visitor.scale(), visitor.language());
    CoolingMethodsView view =
        new CoolingMethodsView(
            from.toString(),
            to.toString(),
            food.orElse(""),
            container.orElse(""),
            new Known(desk.kitchen()).foods(),
            shown.methods().stream().map(found -> item(found, text)).toList(),
            shown.isCut(),
            text.caution(),
            csv(from, to, food, container));
    Frame frame =
        desk.frame(
                visitor, "page.cooling-methods", ADDRESS, Frame.Notice.plain(parameters.faults()))
            .asked(context);
    desk.answer(context, Templates.PAGES.coolingMethods(frame, view));
  }

  private static CoolingMethodsView.Item item(MethodRecord found, CoolingMethodText text) {
    String sign =
        switch (found.standing()) {
          case SHOWN -> "in";
          case MISSED -> "out";
          case TOO_FEW -> "pending";
        };
    return new CoolingMethodsView.Item(sign, text.method(found.method()), text.says(found));
  }

  private static String csv(
      LocalDate from, LocalDate to, Optional<String> food, Optional<String> container) {
    return "/api/v1/cooling-methods?format=csv&from="
        + from
        + "&to="
        + to
        + food.map(name -> "&food=" + encoded(name)).orElse("")
        + container.map(name -> "&container=" + encoded(name)).orElse("");
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
  }

  private static Optional<String> given(Context context, String name) {
    return Optional.ofNullable(context.queryParam(name))
        .map(String::strip)
        .filter(text -> !text.isEmpty());
  }

  private Instant start(LocalDate day) {
    return day.atStartOfDay(desk.zone()).toInstant();
  }
}
