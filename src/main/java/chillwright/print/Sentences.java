package chillwright.print;

import chillwright.core.log.LogEntry;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Acts;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.Remark;
import chillwright.core.rules.Rule;
import chillwright.core.rules.Shape.DayCount;
import chillwright.core.rules.Shape.Hold;
import chillwright.core.rules.Shape.Reach;
import chillwright.core.rules.Shape.StaysFrozen;
import chillwright.core.rules.Shape.TimeAlone;
import chillwright.core.rules.Verdict;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What a finding says, in words a cook can act on: what the record shows, by when, and what to do.
 *
 * @param zone the kitchen's zone, for clock times
 * @param scale the scale the lot is read in
 * @param now the moment the finding is read
 */
public record Sentences(ZoneId zone, Scale scale, Instant now) {

  /** Worst verdict first; of equal verdicts the one whose deadline comes (or came) first. */
  public static Comparator<Finding> worstFirst(Instant now) {
    return Comparator.<Finding, Verdict>comparing(finding -> finding.at(now))
        .thenComparing(finding -> finding.deadline().orElse(Instant.MAX))
        .thenComparing(Finding::opensAt)
        .thenComparing(finding -> finding.rule().id());
  }

  /**
   * The same without the time that is left, for where a clock counts that down beside it.
   *
   * @param last the moment it is counted to
   */
  public String saysUncounted(Finding finding, Instant last) {
    return says(finding).replace(left(last), ".");
  }

  private String left(Instant last) {
    return " (" + Figures.duration(Duration.between(now, last)) + " left).";
  }

  /** The sentence for a finding, with the rule set's corrective actions where they are needed. */
  public String says(Finding finding) {
    String fact =
        switch (finding.at(now)) {
          case OUT -> out(finding) + reheat(finding) + doNow(finding);
          case NOT_SHOWN -> notShown(finding) + reheat(finding);
          case PENDING -> pending(finding);
          case IN -> in(finding);
          case NO_RULE -> finding.rule().says();
        };
    fact += Refreezing.answer(finding.rule(), finding.at(now), scale);
    return finding.has(Remark.FROM_SOURCE) ? "From lot " + finding.lot() + ": " + fact : fact;
  }

  private String out(Finding finding) {
    Rule rule = finding.rule();
    if (rule.shape() instanceof Reach reach) {
      return "Still "
          + seen(finding)
          + ": "
          + reach.to().text(scale)
          + " was due"
          + finding.deadline().map(last -> " by " + time(last)).orElse(" before")
          + ".";
    }
    if (rule.shape() instanceof Hold) {
      return seenCapital(finding)
          + finding
              .elapsed()
              .longest()
              .map(time -> ", last good " + Figures.duration(time) + " before")
              .orElse("")
          + "; the limit is "
          + Figures.limit(rule, scale)
          + ".";
    }
    if (rule.shape() instanceof StaysFrozen) {
      return seenCapital(finding) + "; frozen food stays frozen.";
    }
    if (rule.shape() instanceof TimeAlone) {
      return timeIsUp(finding);
    }
    return dayIsOver(finding);
  }

  private String timeIsUp(Finding finding) {
    if (finding.has(Remark.MARKED_TOO_LATE)) {
      return "The mark on the food is later than the rule allows: "
          + finding.deadline().map(this::time).orElse("")
          + ".";
    }
    if (finding.has(Remark.ABOVE_CEILING)) {
      return seenCapital(finding) + ", above the ceiling for food under time control.";
    }
    return "Its time was up at "
        + finding.deadline().map(this::time).orElse("")
        + " ("
        + Figures.limit(finding.rule(), scale)
        + ").";
  }

  private String dayIsOver(Finding finding) {
    String day = finding.deadline().map(this::day).orElse("");
    return finding.has(Remark.FROZEN_TOO_LATE)
        ? "Its last day, " + day + ", had passed before it was frozen."
        : "Its last day was " + day + ".";
  }

  private String notShown(Finding finding) {
    Rule rule = finding.rule();
    if (finding.has(Remark.NO_READING)) {
      return "No reading was taken, so the record does not show "
          + Figures.limit(rule, scale)
          + ".";
    }
    if (finding.has(Remark.START_NOT_SHOWN)) {
      return "The record does not show when the clock started, so it cannot show "
          + Figures.limit(rule, scale)
          + bounds(finding)
          + "."
          + unlessShown(finding);
    }
    if (finding.has(Remark.STANDING_NOT_SHOWN)) {
      return "Nothing shows that it stood covered; a reading two minutes or more after the heating"
          + " would.";
    }
    if (finding.has(Remark.FOUND_SOFT)) {
      return "Found soft without a temperature: take one now.";
    }
    if (finding.has(Remark.READING_OVERDUE)) {
      return overdue(finding);
    }
    return "The record does not show "
        + Figures.limit(rule, scale)
        + bounds(finding)
        + finding.deadline().map(d -> "; a reading by " + time(d) + " would have").orElse("")
        + "."
        + unlessShown(finding);
  }

  /** A cooling or reheating that cannot be shown is handled as if its limit was missed. */
  private String unlessShown(Finding finding) {
    return Acts.calls(finding) && !finding.rule().actions().isEmpty()
        ? " Unless something else shows it, act as if it was missed:" + doNow(finding)
        : "";
  }

  /** What came of a reheat that was logged while the food cooled. */
  private static String reheat(Finding finding) {
    if (finding.has(Remark.REHEATED_TOO_OFTEN)) {
      return " It had been reheated before; another reheat does not start the cooling again.";
    }
    boolean isTooLate = finding.has(Remark.REHEAT_TOO_LATE) || finding.has(Remark.REHEAT_BEGUN);
    return isTooLate
        ? " A reheat that is not done before the limit has passed does not mend this. If your"
            + " authority allows it, log that as an action before it is done; then a new cooling"
            + " clock starts with it."
        : "";
  }

  private String overdue(Finding finding) {
    String limit =
        finding.rule().shape() instanceof Reach reach
            ? reach.to().text(scale)
            : Figures.limit(finding.rule(), scale);
    Optional<LogEntry> read = finding.decisive().filter(e -> e.temperature().isPresent());
    String by = finding.deadline().map(d -> " by " + time(d)).orElse("");
    if (finding.has(Remark.CLOSED_UNREAD)) {
      String last = read.map(e -> ", last read " + seen(finding)).orElse("");
      return "No reading shows " + limit + by + last + "; the lot is closed.";
    }
    boolean isReadLate =
        read.isPresent()
            && finding
                .deadline()
                .filter(last -> !read.get().happenedAt().isBefore(last))
                .isPresent();
    if (isReadLate) {
      return "Still "
          + seen(finding)
          + ", when the time was up ("
          + limit
          + by
          + ", counted from the last proof): act as if the limit was missed."
          + doNow(finding);
    }
    return "Reading overdue: nothing shows "
        + limit
        + by
        + read.map(e -> " (last read " + seen(finding) + ")").orElse("")
        + ". Take one now and log it. If the limit was missed:"
        + doNow(finding);
  }

  private String bounds(Finding finding) {
    Optional<Duration> shortest = finding.elapsed().shortest();
    Optional<Duration> longest = finding.elapsed().longest();
    if (shortest.isEmpty() || longest.isEmpty()) {
      return "";
    }
    String least =
        shortest.get().isZero()
            ? "at most "
            : "between " + Figures.duration(shortest.get()) + " and ";
    return ", only that it took " + least + Figures.duration(longest.get()) + estimate(finding);
  }

  private static String estimate(Finding finding) {
    String along = finding.has(Remark.LOG_LINEAR) ? "cooling curve" : "straight line";
    return finding
        .elapsed()
        .estimate()
        .map(e -> " (about " + Figures.duration(e) + " on a " + along + ")")
        .orElse("");
  }

  private String pending(Finding finding) {
    Instant last = finding.deadline().orElse(finding.settlesAt());
    String left = left(last);
    if (finding.rule().shape() instanceof Reach reach) {
      return reach.to().text(scale) + " by " + time(last) + left + reheatBegun(finding, last);
    }
    if (finding.rule().shape() instanceof DayCount) {
      return "Last day " + day(last) + ".";
    }
    if (finding.rule().shape() instanceof Hold hold) {
      return "Back to "
          + Figures.limit(finding.rule(), scale)
          + " by "
          + time(last)
          + left
          + (hold.allowed().isZero() ? "" : " A reading will show it.");
    }
    boolean isSetOut = finding.rule().occasions().contains(Occasion.SET_OUT);
    return (isSetOut ? "Eat, chill or discard by " : "Serve or discard by ") + time(last) + left;
  }

  private String reheatBegun(Finding finding, Instant last) {
    if (!finding.has(Remark.REHEAT_BEGUN)) {
      return finding.has(Remark.REHEATED_TOO_OFTEN) ? reheat(finding) : "";
    }
    return finding.rule().actions().stream()
        .map(Rule.Action::says)
        .filter(act -> act.startsWith("reheat to "))
        .map(
            act -> " Being reheated: " + upTo(act, " and ") + " by then, or the old clock runs on.")
        .findFirst()
        .orElse(
            " Being reheated: it must be done by " + time(last) + ", or the old clock runs on.");
  }

  private static String upTo(String text, String end) {
    int at = text.indexOf(end);
    return at < 0 ? text : text.substring(0, at);
  }

  private String in(Finding finding) {
    if (finding.has(Remark.CLOSED_BY_REHEAT)) {
      return "Reheated in time, " + seen(finding) + "; the cooling starts again from there.";
    }
    if (finding.rule().shape() instanceof Reach reach) {
      String flag = finding.has(Remark.ROSE_AGAIN) ? "; it had risen again before" : "";
      return reach.to().text(scale)
          + " reached"
          + finding
              .elapsed()
              .longest()
              .filter(t -> !t.isZero())
              .map(t -> " in " + Figures.duration(t) + " at most")
              .orElse("")
          + flag
          + ".";
    }
    if (finding.rule().shape() instanceof Hold) {
      return Figures.limit(finding.rule(), scale)
          + " at every reading"
          + gap(finding)
          + lastRead(finding)
          + ".";
    }
    if (finding.rule().shape() instanceof StaysFrozen) {
      return "Frozen, " + seen(finding) + ".";
    }
    if (finding.rule().shape() instanceof DayCount && !finding.has(Remark.CLOSED_IN_TIME)) {
      return finding.has(Remark.USE_AT_ONCE)
          ? "Frozen with no days left: use at once when thawed."
          : "Frozen with days left; the count stands still.";
    }
    return "Within its time.";
  }

  private static String gap(Finding finding) {
    return finding
        .elapsed()
        .longest()
        .filter(gap -> !gap.isZero())
        .map(gap -> "; longest gap between looks " + Figures.duration(gap))
        .orElse("");
  }

  /** Silence is no fault of holding, but a cook must see how long it has lasted. */
  private String lastRead(Finding finding) {
    return finding
        .decisive()
        .filter(read -> finding.has(Remark.STILL_GOES_ON))
        .map(read -> Duration.between(read.happenedAt(), now))
        .filter(silence -> silence.compareTo(Duration.ofMinutes(1)) >= 0)
        .map(silence -> "; last read " + Figures.duration(silence) + " ago")
        .orElse("");
  }

  private String seen(Finding finding) {
    return finding
        .decisive()
        .map(entry -> Figures.reading(entry) + " at " + time(entry.happenedAt()))
        .orElse("out of limits");
  }

  private String seenCapital(Finding finding) {
    String words = seen(finding);
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  /** The corrective actions as the rule set gives them: " Discard, or reheat …". */
  private String doNow(Finding finding) {
    if (finding.rule().actions().isEmpty()) {
      return "";
    }
    String all =
        finding.rule().actions().stream()
            .filter(
                act -> !(finding.has(Remark.REHEATED_TOO_OFTEN) && act.offeredFor().isPresent()))
            .map(act -> act.says() + until(act, finding))
            .collect(Collectors.joining(", or "));
    return " " + all.substring(0, 1).toUpperCase(Locale.ROOT) + all.substring(1) + ".";
  }

  private String until(Rule.Action act, Finding finding) {
    String kind = finding.offered(now).contains(act) ? " (until " : " (no longer: that was until ";
    return finding.offeredUntil(act).map(last -> kind + time(last) + ")").orElse("");
  }

  private String time(Instant moment) {
    return Figures.time(moment, zone, now);
  }

  private String day(Instant moment) {
    return moment.atZone(zone).toLocalDate().toString();
  }

  /** A verdict in words, for a heading. */
  public static String heading(Verdict verdict) {
    return switch (verdict) {
      case OUT -> "OUT OF COMPLIANCE";
      case NOT_SHOWN -> "NOT SHOWN BY THE RECORD";
      case PENDING -> "STILL RUNNING";
      case IN -> "IN COMPLIANCE";
      case NO_RULE -> "NO RULE";
    };
  }
}
