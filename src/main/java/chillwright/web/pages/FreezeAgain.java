package chillwright.web.pages;

import chillwright.core.log.Category;
import chillwright.core.measure.Limit;
import chillwright.core.measure.SaidLength;
import chillwright.core.measure.Temperature;
import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Shape.Hold;
import chillwright.logfile.Degrees;
import chillwright.print.Refreezing;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** "May I freeze it again?", of the food that is asked about and by how it was found. */
final class FreezeAgain {
  /** Hotter or colder than any food that is asked about is read: our own bounds, no source. */
  private static final double HOTTEST_CELSIUS = 121;

  private static final double COLDEST_CELSIUS = -60;

  /** Where water freezes at the pressure of the air; below that no food is soft all through. */
  private static final double FREEZING_CELSIUS = 0;

  private static final Duration LONGEST = Duration.ofHours(1000);

  private final Map<String, String> fields;
  private final RuleSet rules;
  private final Visitor visitor;
  private final Map<String, String> wrong;

  /**
   * @param rules the advice for homes
   * @param wrong takes what is wrong, by the name of its field
   */
  FreezeAgain(
      Map<String, String> fields, RuleSet rules, Visitor visitor, Map<String, String> wrong) {
    this.fields = fields;
    this.rules = rules;
    this.visitor = visitor;
    this.wrong = wrong;
  }

  /** What holds of that food, or of any where none is named; then what was found, judged. */
  List<String> says(Optional<Category> food) {
    List<String> says = new ArrayList<>();
    Optional<Temperature> read = read();
    Optional<Duration> warm = warm();
    boolean isHeld = food.filter(kind -> kind.tcs() && !kind.discardWhenSoft()).isPresent();
    if (isHeld && isAsked() && read.isEmpty() && warm.isEmpty() && !isFound()) {
      wrong.putIfAbsent("ice", visitor.say("again.say-how"));
    }
    if (wrong.isEmpty() && isHeld) {
      rules.thawedLimit().ifPresent(rule -> judge(rule, read, warm, says));
    }
    food.map(kind -> Refreezing.advice(rules, kind, visitor.language(), visitor.scale()))
        .orElseGet(() -> Refreezing.advice(rules, visitor.language(), visitor.scale()))
        .ifPresent(says::add);
    return says;
  }

  private boolean isAsked() {
    return fields.containsKey("again") && wrong.isEmpty();
  }

  /** Whether a choice tells how it was found. */
  private boolean isFound() {
    return fields.containsKey("ice");
  }

  /** The answer, with how a reading was understood, and whether the other scale changes it. */
  private void judge(
      Rule rule, Optional<Temperature> read, Optional<Duration> warm, List<String> says) {
    Optional<String> answer = judged(rule, read, warm);
    answer.ifPresent(says::add);
    read.ifPresent(
        at -> {
          Optional<Temperature> other = isBare() ? inOtherScale() : Optional.empty();
          boolean isAnother =
              other.filter(o -> !judged(rule, Optional.of(o), warm).equals(answer)).isPresent();
          says.add(
              isAnother
                  ? visitor.say("again.other", at.text(), other.orElseThrow().text())
                  : visitor.say("again.as-read", at.text()));
        });
  }

  private boolean isBare() {
    String given = given();
    return !given.isEmpty() && Character.isDigit(given.charAt(given.length() - 1));
  }

  private String given() {
    return fields.getOrDefault("read", "").replace(',', '.');
  }

  private Optional<Temperature> inOtherScale() {
    return Degrees.read(given() + (visitor.scaleLetter().equals("F") ? "C" : "F"))
        .filter(at -> at.celsiusDegrees() <= HOTTEST_CELSIUS);
  }

  /**
   * Ice crystals or a cold reading tell; warmer, the time does, and an unknown time is too long.
   */
  private Optional<String> judged(Rule rule, Optional<Temperature> read, Optional<Duration> warm) {
    Hold hold = (Hold) rule.shape();
    boolean hasCrystals = fields.getOrDefault("ice", "").equals("crystals");
    Optional<Limit> cold = hold.atMost();
    boolean isCold = read.flatMap(at -> cold.map(limit -> limit.isColdEnough(at))).orElse(false);
    if (read.isEmpty() && warm.isEmpty() && !isFound()) {
      return Optional.empty();
    }
    // Cold again is cold too late: what it was in between stays.
    boolean isLong = warm.filter(time -> time.compareTo(hold.allowed()) > 0).isPresent();
    if (isLong) {
      return Optional.of(visitor.say("again.no"));
    }
    if (read.isPresent() ? isCold : hasCrystals) {
      return Optional.of(visitor.say("again.may") + " " + visitor.say("again.days"));
    }
    if (read.isEmpty() && warm.isEmpty()) {
      return Optional.of(visitor.say("again.read"));
    }
    return Optional.of(
        warm.isPresent()
            ? visitor.say("again.still") + " " + visitor.say("again.days")
            : visitor.say("again.no"));
  }

  private Optional<Temperature> read() {
    String given = given();
    if (given.isEmpty()) {
      return Optional.empty();
    }
    Optional<Temperature> read =
        Degrees.read(isBare() ? given + visitor.scaleLetter() : given)
            .filter(at -> at.celsiusDegrees() <= HOTTEST_CELSIUS)
            .filter(at -> at.celsiusDegrees() >= COLDEST_CELSIUS);
    if (read.isEmpty()) {
      wrong.put("read", visitor.say("again.no-temperature", given));
    }
    if (isSoft() && read.filter(at -> at.celsiusDegrees() < FREEZING_CELSIUS).isPresent()) {
      wrong.put("read", visitor.say("again.other-scale", given));
    }
    return read;
  }

  private boolean isSoft() {
    return fields.getOrDefault("ice", "").equals("soft");
  }

  private Optional<Duration> warm() {
    String given = fields.getOrDefault("warm", "");
    Optional<Duration> warm = SaidLength.of(given).filter(length -> length.compareTo(LONGEST) <= 0);
    if (warm.isEmpty() && !given.isEmpty()) {
      wrong.put("warm", visitor.say("again.no-time", given));
    }
    return warm;
  }
}
