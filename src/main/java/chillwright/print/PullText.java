package chillwright.print;

import chillwright.core.log.Phase;
import chillwright.core.plan.Pull;
import chillwright.core.plan.Pull.Need;
import chillwright.core.plan.Pull.Unlogged;
import java.time.LocalDate;

/**
 * What to take out of the freezer, in words.
 *
 * @param times the days and moments of whoever reads it
 */
public record PullText(Times times) {
  /** A day as a heading. */
  public String title(LocalDate day) {
    return times.day(day);
  }

  private String say(String key, Object... filled) {
    return times.language().say(key, filled);
  }

  /** The same as {@link #what}, after the hour if a plan says one. */
  public String line(Pull pull) {
    return pull.at().map(at -> times.hour(at) + " ").orElse("") + what(pull);
  }

  /** How much of which lot, and from where. */
  public String what(Pull pull) {
    String place =
        pull.lot().standing().flatMap(standing -> standing.place()).map(at -> ", " + at).orElse("");
    String portions =
        pull.portions().isPresent()
            ? say("pull.portions", pull.portions().getAsInt())
            : say("pull.uncounted");
    return pull.lot().food() + " (" + pull.lot().lot() + place + "), " + portions;
  }

  /** What calls for it, and its last day. */
  public String why(Pull pull) {
    String why =
        switch (pull.why()) {
          case PLAN ->
              say(
                  isFrozen(pull) ? "pull.plan" : "pull.plan.to-freeze",
                  pull.need().map(Need::event).orElse(""));
          case QUALITY -> say("pull.quality", times.day(pull.day()));
          case ROOM -> say(isOver(pull) ? "pull.room.over" : "pull.room", times.day(pull.day()));
          case LAST_DAY -> say("pull.last-day", times.day(pull.day()));
        };
    boolean isOfThawing = pull.why() != Pull.Why.LAST_DAY;
    return pull.lastDay()
        .filter(day -> isOfThawing)
        .map(day -> why + " " + say(thawed(pull), times.day(day)))
        .orElse(why);
  }

  private boolean isOver(Pull pull) {
    return times.today().filter(pull.day()::isBefore).isPresent();
  }

  private static boolean isFrozen(Pull pull) {
    return pull.lot().standing().filter(lot -> lot.phase() == Phase.FROZEN).isPresent();
  }

  private static String thawed(Pull pull) {
    return pull.why() == Pull.Why.PLAN ? "pull.thawed" : "pull.thawed-today";
  }

  /** A dish for which the freezer holds too little. */
  public String missing(Need need, int portions) {
    return say("pull.missing", need.event(), need.dish(), portions);
  }

  /** A dish that comes out by a plan: after its hour, how much of what. */
  public String line(Unlogged dish) {
    return times.hour(dish.at()) + " " + dish.dish() + ", " + say("pull.portions", dish.portions());
  }

  /** By which plan it comes out, and what the log has of it. */
  public String why(Unlogged dish) {
    return say(
        dish.thaws() ? "pull.unlogged.thaws" : "pull.unlogged.out",
        dish.event(),
        dish.dish(),
        times.said(dish.at()),
        say(dish.isBegun() ? "pull.unlogged.begun" : "pull.unlogged.none"));
  }

  /** What holds of the whole list. */
  public String caution() {
    return say("pull.caution");
  }
}
