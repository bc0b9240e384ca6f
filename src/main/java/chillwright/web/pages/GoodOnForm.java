package chillwright.web.pages;

import chillwright.core.keeping.StillGood;
import chillwright.logfile.SaidTime.Toward;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/** The question what is still good on a day, or once posted: read, answered and shown again. */
final class GoodOnForm {
  static final String DAY = "good-on";
  static final String DAYS = "days";

  private static final int MOST_DAYS = 365;

  private GoodOnForm() {}

  /** What is asked; a day that is over is refused, since all that is on hand is here today. */
  static Optional<StillGood> read(Parameters parameters, Desk desk, Visitor visitor) {
    LocalDate today = LocalDate.ofInstant(desk.kitchen().now(), desk.zone());
    Optional<Integer> days = parameters.days(DAYS, MOST_DAYS);
    Optional<LocalDate> day =
        parameters.day(DAY, today, Toward.AHEAD).or(() -> days.map(posted -> today));
    day.filter(today::isAfter)
        .map(desk.times(visitor)::day)
        .ifPresent(over -> parameters.refuseField(DAY, visitor.say("lots.good-on.over", over)));
    OptionalInt after = days.map(OptionalInt::of).orElse(OptionalInt.empty());
    return day.map(on -> new StillGood(on, after));
  }

  /** The form with what it rests on and what it leaves out. */
  static LotsView.Good shown(StillGood asked, GoodOn.Split split, Desk desk, Visitor visitor) {
    boolean isPosted = asked.after().isPresent();
    String until = desk.times(visitor).day(asked.until());
    return new LotsView.Good(
        asked.day().toString(),
        isPosted ? Integer.toString(asked.after().getAsInt()) : "",
        visitor.say(isPosted ? "lots.good-on.posted" : "lots.good-on.stays", until),
        split.leftOut(),
        split.isCut() ? visitor.say("lots.good-on.cut", GoodOn.LOOKED_AT) : "",
        Map.of());
  }

  /** The form with what was entered, and what is wrong with it. */
  static LotsView.Good refused(Parameters parameters) {
    return new LotsView.Good(
        parameters.text(DAY).orElse(""),
        parameters.text(DAYS).orElse(""),
        "",
        List.of(),
        "",
        parameters.wrong());
  }

  /** The address of the form as it was filled in. */
  static String again(Parameters parameters) {
    return List.of("place", DAY, DAYS).stream()
        .filter(name -> parameters.text(name).isPresent())
        .map(name -> name + "=" + encoded(parameters.text(name).get()))
        .collect(Collectors.joining("&", LotsPages.ON_HAND + "?", ""));
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
