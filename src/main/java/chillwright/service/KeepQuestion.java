package chillwright.service;

import chillwright.core.keeping.AgeAsked;
import chillwright.core.keeping.Keeper;
import chillwright.core.keeping.Keeping;
import chillwright.core.log.Category;
import chillwright.core.log.Details;
import chillwright.core.log.EntryId;
import chillwright.core.log.Food;
import chillwright.core.log.FoodWords;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Mark;
import chillwright.core.log.Timeline;
import chillwright.core.log.Word;
import chillwright.core.rules.Assessment;
import chillwright.core.rules.RuleSet;
import chillwright.rulebook.RuleBook;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The home cook's question, "how long does this keep?", asked by dates alone and answered by the
 * same rules as a logged lot. Nothing is stored.
 *
 * @param made the day it was made
 * @param opened the day a bought pack was opened
 * @param until the maker's date on an opened pack
 * @param thawed the day from which it was thawed through
 */
public record KeepQuestion(
    Category category,
    Optional<LocalDate> made,
    Optional<LocalDate> opened,
    Optional<LocalDate> until,
    Optional<LocalDate> frozen,
    Optional<LocalDate> thawed) {
  private static final String AHEAD =
      "%s is still to come: look at the year; if it is right, the dates hold when it goes as given";

  private static final String UNKNOWN =
      "the day it was made or bought is not given: counted as if none had passed before it was"
          + " frozen";

  /** What was asked by, what keeps how long, under which rules, and whether its age is known. */
  public record Answer(Timeline timeline, RuleSet rules, Keeping keeping, AgeAsked age) {
    /** The day it thawed, where one was given. */
    public Optional<LocalDate> thawed() {
      return timeline.entries().stream()
          .filter(row -> row.word() == Word.THAWING)
          .map(row -> timeline.day(row.happenedAt()))
          .findFirst();
    }
  }

  /**
   * A date that cannot be.
   *
   * @param flaw what kind of wrong it is
   * @param against the name of the date that it contradicts, or that must be there too
   * @param allowed what it would have to be
   * @param says what is wrong with it and what to do, to be read after its name and the date
   */
  public record WrongDate(
      String name, LocalDate given, Flaw flaw, String against, String allowed, String says) {}

  /** Why a date cannot be. */
  public enum Flaw {
    TOO_EARLY,
    ALONE
  }

  /** A date under its name. */
  private record Named(String name, LocalDate day) {}

  /** Dates that contradict each other; empty if the question can be answered. */
  public List<WrongDate> wrongDates() {
    List<WrongDate> wrong = new ArrayList<>();
    Optional<Named> madeOn = made.map(day -> new Named("made", day));
    Optional<Named> begun = madeOn.or(() -> opened.map(day -> new Named("opened", day)));
    notBefore("frozen", frozen, begun, wrong);
    notBefore("thawed", thawed, frozen.map(day -> new Named("frozen", day)).or(() -> begun), wrong);
    notBefore("opened", opened, madeOn, wrong);
    if (opened.isEmpty()) {
      until.ifPresent(
          day ->
              wrong.add(
                  new WrongDate(
                      "until",
                      day,
                      Flaw.ALONE,
                      "opened",
                      "only together with opened",
                      "is the maker's date on a pack: give the day it was opened too")));
    }
    if (frozen.isEmpty()) {
      thawed.ifPresent(
          day ->
              wrong.add(
                  new WrongDate(
                      "thawed",
                      day,
                      Flaw.ALONE,
                      "frozen",
                      "only together with frozen",
                      "tells only when frozen food thawed: give the day it was frozen too")));
    }
    return wrong;
  }

  private static void notBefore(
      String name, Optional<LocalDate> day, Optional<Named> earlier, List<WrongDate> wrong) {
    day.filter(given -> earlier.map(Named::day).filter(given::isBefore).isPresent())
        .ifPresent(
            given ->
                wrong.add(
                    new WrongDate(
                        name,
                        given,
                        Flaw.TOO_EARLY,
                        earlier.get().name(),
                        "not before " + earlier.get().day(),
                        "is too early: give a day not before " + earlier.get().day())));
  }

  /** The answer by the figures in force on the first day named, or today. */
  public Answer answer(RuleBook book, ZoneId zone, LocalDate today) {
    List<LogEntry> rows = rows(zone, today);
    Timeline timeline =
        new Timeline(
            new LotId("question"),
            new Food(category.title(), category),
            zone,
            List.of(),
            rows,
            List.of(),
            Set.of());
    RuleSet rules = book.on(timeline.day(timeline.beganAt()));
    Keeping dates = Keeper.keep(timeline, Assessment.of(timeline, rules), rules);
    Answer answer = new Answer(timeline, rules, dates, AgeAsked.KNOWN);
    answer = isAgeGiven() ? answer : ofUnknownAge(answer, book, zone);
    Optional<LocalDate> ahead =
        Stream.of(made, opened, frozen, thawed)
            .flatMap(Optional::stream)
            .filter(today::isBefore)
            .max(Comparator.naturalOrder());
    Keeping keeping = answer.keeping();
    if (ahead.isPresent()) {
      keeping = keeping.because(AHEAD.formatted(ahead.get()));
    }
    return new Answer(timeline, rules, keeping, answer.age());
  }

  /** Of food that is frozen since a day nobody named: its days once thawed, and no date. */
  public Answer undated(RuleBook book, ZoneId zone, LocalDate today) {
    Optional<LocalDate> none = Optional.empty();
    Answer any =
        new KeepQuestion(category, none, none, none, Optional.of(today), none)
            .answer(book, zone, today);
    return new Answer(any.timeline(), any.rules(), any.keeping().undated(), any.age());
  }

  /** Whether words for food say that it is frozen, and no day tells since when, or of what age. */
  public boolean isUndated(String words) {
    return FoodWords.isFrozen(words) && frozen.isEmpty() && opened.isEmpty();
  }

  private boolean isAgeGiven() {
    return made.isPresent() || opened.isPresent() || frozen.isEmpty();
  }

  /**
   * Food of unknown age, such as a bought bird. The home chart is printed for food that thawed too,
   * so its days are counted from there; a date mark counts no day that nobody can show.
   */
  private Answer ofUnknownAge(Answer answer, RuleBook book, ZoneId zone) {
    KeepQuestion fresh =
        new KeepQuestion(category.onceThawed(), frozen, opened, until, frozen, thawed);
    Keeping counted = fresh.answer(book, zone, LocalDate.MAX).keeping();
    Keeping dates = answer.keeping();
    if (counted.daysLeftWhenThawed().equals(dates.daysLeftWhenThawed())
        && counted.dateMarkLastDay().equals(dates.dateMarkLastDay())
        && counted.chilledLastDay().equals(dates.chilledLastDay())) {
      return answer;
    }
    if (!Keeper.usesChart(answer.rules())) {
      return new Answer(answer.timeline(), answer.rules(), asking(dates), AgeAsked.MISSING);
    }
    List<String> because = new ArrayList<>(counted.because());
    because.set(0, UNKNOWN);
    return new Answer(
        answer.timeline(), answer.rules(), counted.becauseOf(because), AgeAsked.FROM_THAWING);
  }

  private Keeping asking(Keeping keeping) {
    return keeping.because(
        thawed.isPresent()
            ? "the day it was made is not given: give made (--made) to learn its last day"
            : "the day it was made is not given: give made (--made) to learn the days left after"
                + " thawing");
  }

  /** Rows at fixed hours, so that several on one day keep their order. */
  private List<LogEntry> rows(ZoneId zone, LocalDate today) {
    List<LogEntry> rows = new ArrayList<>();
    made.ifPresent(day -> rows.add(row(Word.PREPARED, at(day, 8, zone))));
    boolean isBought = made.isEmpty() && (opened.isPresent() || frozen.isPresent());
    if (isBought) {
      // A bought pack has no day 1 until it is opened; nor has food of unknown age.
      LocalDate first = opened.or(() -> frozen).orElseThrow();
      rows.add(row(Word.RECEIVED, at(first, 7, zone)));
    }
    if (made.isEmpty() && !isBought) {
      rows.add(row(Word.PREPARED, at(today, 8, zone)));
    }
    opened.ifPresent(day -> rows.add(opening(at(day, 9, zone))));
    frozen.ifPresent(day -> rows.add(row(Word.FROZEN, at(day, 10, zone))));
    thawed.ifPresent(day -> rows.add(row(Word.THAWING, at(day, 11, zone))));
    return rows;
  }

  private LogEntry opening(Instant moment) {
    LogEntry plain = row(Word.OPENED, moment);
    Details marked = Details.NONE.markedUntil(until.map(Mark.Day::new));
    return new LogEntry(
        plain.id(),
        plain.word(),
        moment,
        moment,
        plain.by(),
        plain.note(),
        plain.corrects(),
        marked);
  }

  private static LogEntry row(Word word, Instant moment) {
    return new LogEntry(
        new EntryId(word.text()),
        word,
        moment,
        moment,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Details.NONE);
  }

  private static Instant at(LocalDate day, int hour, ZoneId zone) {
    return day.atTime(LocalTime.of(hour, 0)).atZone(zone).toInstant();
  }
}
