package chillwright.print;

import chillwright.core.log.LogEntry;
import chillwright.core.log.Timeline;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Acts;
import chillwright.core.rules.Finding;
import chillwright.core.rules.HeldHot;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.OpenReheat;
import chillwright.core.rules.OpenReheat.Running;
import chillwright.core.rules.Remark;
import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
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
import java.util.stream.Stream;

/**
 * What a finding says, in words a cook can act on: what the record shows, by when, and what to do.
 *
 * @param zone the kitchen's zone, for clock times
 * @param scale the scale the lot is read in
 * @param now the moment the finding is read
 * @param language what a rule set says stays in its own where we have no translation
 */
public record Sentences(ZoneId zone, Scale scale, Instant now, Language language) {

  /** In English. */
  public Sentences(ZoneId zone, Scale scale, Instant now) {
    this(zone, scale, now, Language.ENGLISH);
  }

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
    return says(finding).replace(left(last), "");
  }

  /** The same of a lot whose life is known. */
  public String saysUncounted(Finding finding, Timeline timeline, RuleSet rules, Instant last) {
    return says(finding, timeline, rules).replace(left(last), "");
  }

  private String left(Instant last) {
    return " " + say("left", Figures.duration(Duration.between(now, last)));
  }

  /** The sentence for a finding, with the rule set's corrective actions where they are needed. */
  public String says(Finding finding) {
    return says(finding, doNow(finding));
  }

  /**
   * The same of a lot whose life is known: of food that was reheated in full since a limit was
   * missed it tells that instead of what could have been done, of food being reheated what it must
   * reach by when, and of food that is held hot the hot limit before that of a cooling.
   */
  public String says(Finding finding, Timeline timeline, RuleSet rules) {
    Optional<Running> open = OpenReheat.during(finding, timeline, rules, now);
    ReheatText reheats = new ReheatText(this);
    if (finding.at(now) == Verdict.PENDING) {
      Instant last = finding.deadline().orElse(finding.settlesAt());
      return open.map(to -> reheats.pending(finding, to.to(), to.by(last), left(to.by(last))))
          .or(
              () ->
                  HeldHot.despite(finding, timeline, rules)
                      .map(hot -> say(LeaveText.hotKey(timeline), limit(hot), says(finding))))
          .orElseGet(() -> says(finding));
    }
    if (!Acts.isMissed(finding, now)) {
      return says(finding);
    }
    return Acts.reheatedSince(finding, timeline, rules)
        .map(hot -> reheated(finding, hot, timeline, rules))
        .or(() -> open.flatMap(to -> reheats.missed(finding, timeline, to)))
        .or(() -> Optional.of(say("act.allowed")).filter(l -> Acts.isAllowed(finding, timeline)))
        .map(told -> saysAfter(finding, told))
        .orElseGet(() -> says(finding));
  }

  private String reheated(Finding finding, LogEntry hot, Timeline timeline, RuleSet rules) {
    String done = new ReportText(zone, scale, now).done(Acts.taken(finding, timeline), language);
    return sentences(
        done.isEmpty() ? "" : say("since.done", done),
        say("since.reheated", Figures.reading(hot, scale, language), time(hot.happenedAt())),
        Acts.isUnfit(finding, timeline, rules, now) ? say("since.leave") : "");
  }

  private String says(Finding finding, String what) {
    String fact =
        switch (finding.at(now)) {
          case OUT -> sentences(out(finding), what, new ReheatText(this).came(finding));
          case NOT_SHOWN -> sentences(notShown(finding), new ReheatText(this).came(finding));
          case PENDING -> pending(finding);
          case IN -> in(finding);
          case NO_RULE -> language.saidByRules(finding.rule().says());
        };
    return whole(finding, fact);
  }

  /** Of food that is reheated, what is done stands where it would say what could be done. */
  private String saysAfter(Finding finding, String what) {
    String missed =
        finding.at(now) == Verdict.OUT
            ? out(finding)
            : late(finding).orElseGet(() -> unread(finding));
    return whole(finding, sentences(missed, what));
  }

  private String whole(Finding finding, String fact) {
    String all =
        sentences(
            fact,
            finding.has(Remark.COUNTS_SOURCE) ? say("counts-source") : "",
            Refreezing.answer(finding.rule(), finding.at(now), scale, language));
    return finding.has(Remark.FROM_SOURCE) ? say("from-source", finding.lot(), all) : all;
  }

  private static String sentences(String... sentences) {
    return Stream.of(sentences).filter(text -> !text.isEmpty()).collect(Collectors.joining(" "));
  }

  private String out(Finding finding) {
    Rule rule = finding.rule();
    if (rule.shape() instanceof Reach reach) {
      String to = reach.to().text(scale);
      return finding
          .deadline()
          .map(last -> say("out.reach", seen(finding), to, time(last)))
          .orElseGet(() -> say("out.reach.before", seen(finding), to));
    }
    if (rule.shape() instanceof Hold) {
      String seen = capital(seen(finding));
      Optional<Duration> since = finding.elapsed().longest();
      return since
          .map(time -> say("out.hold.since", seen, Figures.duration(time), limit(rule)))
          .orElseGet(() -> say("out.hold", seen, limit(rule)));
    }
    if (rule.shape() instanceof StaysFrozen) {
      return say("out.frozen", capital(seen(finding)));
    }
    return rule.shape() instanceof TimeAlone ? timeIsUp(finding) : dayIsOver(finding);
  }

  private String timeIsUp(Finding finding) {
    if (finding.has(Remark.ABOVE_CEILING) && !finding.has(Remark.MARKED_TOO_LATE)) {
      return say("out.ceiling", capital(seen(finding)));
    }
    String time = finding.deadline().map(this::time).orElse("");
    return finding.has(Remark.MARKED_TOO_LATE)
        ? say("out.mark", time)
        : say("out.time", time, limit(finding.rule()));
  }

  private String dayIsOver(Finding finding) {
    String key = finding.has(Remark.FROZEN_TOO_LATE) ? "out.day.frozen" : "out.day";
    return say(key, finding.deadline().map(this::day).orElse(""));
  }

  private String notShown(Finding finding) {
    String limit = limit(finding.rule());
    if (finding.has(Remark.NO_READING)) {
      return say("not-shown.no-reading", limit);
    }
    if (finding.has(Remark.USED_COOLING)) {
      return sentences(say("not-shown.used", awaited(finding)), doNow(finding));
    }
    if (finding.has(Remark.START_NOT_SHOWN)) {
      return sentences(say("not-shown.start", bounded(limit, finding)), unlessShown(finding));
    }
    if (finding.has(Remark.STANDING_NOT_SHOWN)) {
      return say("not-shown.standing");
    }
    if (finding.has(Remark.FOUND_SOFT)) {
      return say("not-shown.soft");
    }
    if (finding.has(Remark.READING_OVERDUE) && !finding.has(Remark.FROM_SOURCE)) {
      return overdue(finding);
    }
    return sentences(unread(finding), unlessShown(finding));
  }

  private String unread(Finding finding) {
    String bounded = bounded(limit(finding.rule()), finding);
    return finding
        .deadline()
        .map(last -> say("not-shown.reading", bounded, time(last)))
        .orElseGet(() -> say("not-shown.limit", bounded));
  }

  /** A cooling or reheating that cannot be shown is handled as if its limit was missed. */
  private String unlessShown(Finding finding) {
    return Acts.calls(finding) && !finding.rule().actions().isEmpty()
        ? sentences(say("act.unless"), doNow(finding))
        : "";
  }

  /** "70 °F by 12:00". */
  private String awaited(Finding finding) {
    String bare =
        finding.rule().shape() instanceof Reach reach
            ? reach.to().text(scale)
            : limit(finding.rule());
    return finding.deadline().map(last -> say("by", bare, time(last))).orElse(bare);
  }

  private String overdue(Finding finding) {
    String limit = awaited(finding);
    Optional<LogEntry> read = finding.decisive().filter(e -> e.temperature().isPresent());
    String key = read.isPresent() ? ".read" : "";
    if (finding.has(Remark.CLOSED_UNREAD)) {
      return say("overdue.closed" + key, limit, seen(finding));
    }
    String fact = late(finding).orElseGet(() -> say("overdue" + key, limit, seen(finding)));
    return sentences(fact, doNow(finding));
  }

  /** That it was read when the time was up, and had not reached its limit; empty where not. */
  private Optional<String> late(Finding finding) {
    return finding
        .deadline()
        .filter(last -> finding.has(Remark.READING_OVERDUE))
        .filter(
            last ->
                finding
                    .decisive()
                    .filter(read -> read.temperature().isPresent())
                    .filter(read -> !read.happenedAt().isBefore(last))
                    .isPresent())
        .map(last -> say("overdue.late", seen(finding), awaited(finding)));
  }

  private String bounded(String limit, Finding finding) {
    Optional<Duration> shortest = finding.elapsed().shortest();
    Optional<Duration> longest = finding.elapsed().longest();
    if (shortest.isEmpty() || longest.isEmpty()) {
      return limit;
    }
    String most = Figures.duration(longest.get());
    String bounded =
        shortest.get().isZero()
            ? say("bounds.most", limit, most)
            : say("bounds.between", limit, Figures.duration(shortest.get()), most);
    String key = finding.has(Remark.LOG_LINEAR) ? "about.curve" : "about.line";
    return finding
        .elapsed()
        .estimate()
        .map(about -> say(key, bounded, Figures.duration(about)))
        .orElse(bounded);
  }

  private String pending(Finding finding) {
    Instant last = finding.deadline().orElse(finding.settlesAt());
    if (finding.rule().shape() instanceof DayCount) {
      return say("pending.day", day(last));
    }
    String left = left(last);
    if (finding.rule().shape() instanceof Reach reach) {
      return sentences(
          say("pending.reach", reach.to().text(scale), time(last), left),
          new ReheatText(this).begun(finding, last));
    }
    if (finding.rule().shape() instanceof Hold hold) {
      String key = hold.allowed().isZero() ? "pending.hold" : "pending.hold.read";
      return say(key, limit(finding.rule()), time(last), left);
    }
    boolean isSetOut = finding.rule().occasions().contains(Occasion.SET_OUT);
    return say(isSetOut ? "pending.set-out" : "pending.time", time(last), left);
  }

  private String in(Finding finding) {
    if (finding.has(Remark.CLOSED_BY_REHEAT)) {
      return say("in.reheated", seen(finding));
    }
    Rule rule = finding.rule();
    Optional<String> time =
        finding.elapsed().longest().filter(t -> !t.isZero()).map(Figures::duration);
    if (rule.shape() instanceof Reach reach) {
      String to = reach.to().text(scale);
      String reached =
          time.map(most -> say("in.reach.time", to, most)).orElseGet(() -> say("in.reach", to));
      return (finding.has(Remark.ROSE_AGAIN) ? say("in.rose", reached) : reached) + ".";
    }
    if (rule.shape() instanceof Hold) {
      String held = say("in.hold", limit(rule));
      String looked = time.map(gap -> say("in.gap", held, gap)).orElse(held);
      return silence(finding).map(ago -> say("in.last", looked, ago)).orElse(looked) + ".";
    }
    if (rule.shape() instanceof StaysFrozen) {
      return say("in.frozen", seen(finding));
    }
    if (rule.shape() instanceof DayCount && !finding.has(Remark.CLOSED_IN_TIME)) {
      return say(finding.has(Remark.USE_AT_ONCE) ? "in.days.none" : "in.days");
    }
    return say("in.time");
  }

  /** Silence is no fault of holding, but a cook must see how long it has lasted. */
  private Optional<String> silence(Finding finding) {
    return finding
        .decisive()
        .filter(read -> finding.has(Remark.STILL_GOES_ON))
        .map(read -> Duration.between(read.happenedAt(), now))
        .filter(silence -> silence.compareTo(Duration.ofMinutes(1)) >= 0)
        .map(Figures::duration);
  }

  private String seen(Finding finding) {
    return finding
        .decisive()
        .map(
            entry -> say("seen", Figures.reading(entry, scale, language), time(entry.happenedAt())))
        .orElseGet(() -> say("seen.none"));
  }

  private static String capital(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  /** The corrective actions as the rule set gives them: "Discard, or reheat …". */
  private String doNow(Finding finding) {
    return finding.rule().actions().stream()
        .filter(act -> !(finding.has(Remark.REHEATED_TOO_OFTEN) && act.offeredFor().isPresent()))
        .map(act -> offered(act, finding))
        .reduce((one, other) -> say("or", one, other))
        .map(all -> capital(all) + ".")
        .orElse("");
  }

  private String offered(Rule.Action act, Finding finding) {
    String says = Figures.asPrinted(language.saidByRules(act.says()), scale);
    String key = finding.offered(now).contains(act) ? "act.until" : "act.over";
    return finding.offeredUntil(act).map(last -> say(key, says, time(last))).orElse(says);
  }

  private String limit(Rule rule) {
    return Figures.limit(rule, scale, language);
  }

  String time(Instant moment) {
    return Times.at(now, zone, language).said(moment);
  }

  private String day(Instant moment) {
    return Times.at(now, zone, language).day(moment.atZone(zone).toLocalDate());
  }

  private String say(String key, Object... filled) {
    return language.say(key, filled);
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
