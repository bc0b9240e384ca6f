package chillwright.print;

import chillwright.core.plan.Pull;
import chillwright.core.plan.Pull.Need;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.TextStyle;

/**
 * What to take out of the freezer, in words.
 *
 * @param zone the kitchen's zone
 */
public record PullText(ZoneId zone, Language language) {
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");

  /** A day as a heading. */
  public String title(LocalDate day) {
    return day.getDayOfWeek().getDisplayName(TextStyle.FULL, language.locale()) + " " + day;
  }

  /** The same as {@link #what}, after the hour if a plan says one. */
  public String line(Pull pull) {
    return pull.at().map(at -> CLOCK.format(at.atZone(zone)) + " ").orElse("") + what(pull);
  }

  /** How much of which lot, and from where. */
  public String what(Pull pull) {
    String place =
        pull.lot().standing().flatMap(standing -> standing.place()).map(at -> ", " + at).orElse("");
    String portions =
        pull.portions().isPresent()
            ? language.say("pull.portions", pull.portions().getAsInt())
            : language.say("pull.uncounted");
    return pull.lot().food() + " (" + pull.lot().lot() + place + "), " + portions;
  }

  /** What calls for it, and its last day. */
  public String why(Pull pull) {
    String why =
        switch (pull.why()) {
          case PLAN -> language.say("pull.plan", pull.need().map(Need::event).orElse(""));
          case QUALITY -> language.say("pull.quality", pull.day());
          case LAST_DAY -> language.say("pull.last-day", pull.day());
        };
    boolean isFrozen = pull.why() != Pull.Why.LAST_DAY;
    return pull.lastDay()
        .filter(day -> isFrozen)
        .map(day -> why + " " + language.say(thawed(pull), day))
        .orElse(why);
  }

  private static String thawed(Pull pull) {
    return pull.why() == Pull.Why.PLAN ? "pull.thawed" : "pull.thawed-today";
  }

  /** A dish for which the freezer holds too little. */
  public String missing(Need need, int portions) {
    return language.say("pull.missing", need.event(), need.dish(), portions);
  }

  /** What holds of the whole list. */
  public String caution() {
    return language.say("pull.caution");
  }
}
