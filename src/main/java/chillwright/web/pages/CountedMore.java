package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.log.CountedPart.Count;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.PutBack;
import chillwright.core.log.SwappedPortions;
import chillwright.core.log.Word;
import chillwright.service.LotView;
import chillwright.service.Lots;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Tells, where more was counted than the log says, how the log is mended: portions come from its
 * entries alone, so one of them is wrong or missing.
 */
record CountedMore(Desk desk, LotView view, Visitor visitor) {
  static final String MORE = "more";

  /** So many takings are offered, the last first. */
  private static final int OFFERED = 3;

  /** More were made than was written; else more were divided off. */
  static final String MADE = "made";

  /** They were written for other parts. */
  static final String PARTS = "parts";

  private static final String DIVIDED = "divided";
  private static final String MENDED = "mended";

  /** The address of a page that is to tell it, and how many more. */
  static String on(String page, long more) {
    return page + (page.contains("?") ? "&" : "?") + MORE + "=" + more;
  }

  /** The page of a part whose counts were corrected. */
  static String mended(LotId part) {
    return "/lots/" + part + "?" + MORE + "=" + MENDED;
  }

  /** What the page is to offer: a way to correct so many. */
  static Filled asked(Context context) {
    String more = Optional.ofNullable(context.queryParam(MORE)).orElse("");
    return Filled.with(more.matches("\\d{1,6}") ? Map.of(MORE, more) : Map.of());
  }

  /** Ways to correct the counts of a part and of what it came from together. */
  static List<LotPageView.More> ways(Lots lots, LotState lot, Filled form, Visitor visitor) {
    // Another form has a field of that name, for codes of lots.
    String more = form.given("form").equals("combined") ? "" : form.given(MORE);
    List<LotPageView.More> ways = new ArrayList<>();
    for (String way : more.matches("\\d{1,6}") ? List.of(MADE, DIVIDED) : List.<String>of()) {
      List<Count> counts = lots.countsOf(lot.lot(), Integer.parseInt(more), way.equals(MADE));
      String begun =
          counts.stream()
              .filter(Count::isFirst)
              .map(count -> count.lot() + ": " + count.portions())
              .collect(Collectors.joining(", "));
      String key =
          way.equals(MADE) ? "share.more-counted.mend-made" : "share.more-counted.mend-divided";
      if (!counts.isEmpty()) {
        ways.add(new LotPageView.More(more, left(lot), way, visitor.say(key, begun)));
      }
    }
    return ways;
  }

  /** How many the log says are left. */
  static int left(LotState lot) {
    return lot.portions().left().orElse(0);
  }

  /** Parts that what was found may have been written for; none where nothing was found. */
  static List<LotPageView.Giver> givers(Lots lots, LotState lot, Filled form, Visitor visitor) {
    String more = form.given("form").equals("combined") ? "" : form.given(MORE);
    if (!more.matches("[1-9]\\d{0,5}")) {
      return List.of();
    }
    boolean isAgain = form.given("form").equals(MORE);
    int rest = Integer.parseInt(more);
    List<LotPageView.Giver> givers = new ArrayList<>();
    for (SwappedPortions.Giver giver : lots.givers(lot.lot())) {
      int likely = Math.min(rest, Math.min(giver.missing(), giver.most()));
      rest -= likely;
      String code = giver.part().text();
      String key =
          giver.missing() == 0 ? "share.more-counted.has" : "share.more-counted.has-missing";
      givers.add(
          new LotPageView.Giver(
              more,
              left(lot),
              code,
              visitor.say(key, code, giver.left(), giver.missing()),
              isAgain
                  ? form.given(MendedCounts.OF + code)
                  : likely == 0 ? "" : Integer.toString(likely)));
    }
    return givers;
  }

  /** What to look at; none where nothing was counted or corrected just now. */
  List<Frame.Notice> notices(Context context) {
    List<LogEntry> own = view.judged().map(judged -> judged.timeline().own()).orElse(List.of());
    String asked = context.queryParam(MORE);
    if (asked == null || own.isEmpty()) {
      return List.of();
    }
    if (asked.equals(MENDED)) {
      int now = left(view.state());
      return Frame.Notice.plain(List.of(visitor.say("share.more-counted.mended", now)));
    }
    Lots lots = desk.kitchen().lots();
    int left = left(view.state());
    List<Frame.Notice> notices = new ArrayList<>();
    notices.add(
        new Frame.Notice(visitor.say("share.more-counted", left), List.of(), Optional.empty()));
    notices.add(made(own.get(0), !ways(lots, view.state(), asked(context), visitor).isEmpty()));
    List<LogEntry> last = new ArrayList<>(own);
    Collections.reverse(last);
    last.stream()
        .filter(entry -> entry.word() == Word.PORTIONS && !isForLot(entry))
        .limit(OFFERED)
        .forEach(entry -> notices.add(ofEntry("share.more-counted.taken", entry)));
    // What is not told is no reason to leave a part out; one with more than was found is none.
    int found = asked.matches("\\d{1,6}") ? Integer.parseInt(asked) : Integer.MAX_VALUE;
    List<String> parts =
        lots.putBacks(view.state().lot()).stream()
            .filter(back -> back.portions() <= found)
            .map(PutBack::part)
            .filter(part -> !part.equals(view.state().lot()))
            .map(LotId::text)
            .toList();
    if (!parts.isEmpty()) {
      String says = visitor.say("share.more-counted.divided");
      notices.add(new Frame.Notice(says, parts, Optional.empty()));
    }
    return notices;
  }

  /** What it began with; of a part the lot that it was divided from says so, too. */
  private Frame.Notice made(LogEntry first, boolean canMend) {
    boolean isMade = first.word() == Word.COOKED || first.word() == Word.PREPARED;
    if (isMade || view.sources().size() != 1) {
      return ofEntry("share.more-counted.made", first);
    }
    List<String> sources = view.sources().stream().map(LotId::text).toList();
    return canMend
        ? new Frame.Notice(visitor.say("share.more-counted.part"), sources, Optional.empty())
        : new Frame.Notice(
            visitor.say("share.more-counted.part-alone"), sources, Optional.of(address(first)));
  }

  private String address(LogEntry entry) {
    return "/lots/" + view.state().lot() + "/correct?entry=" + entry.id();
  }

  /** Such portions are in that lot now, and go back from its page. */
  private boolean isForLot(LogEntry entry) {
    List<String> made = view.descendants().stream().map(LotId::text).toList();
    return entry.details().to().filter(made::contains).isPresent();
  }

  private Frame.Notice ofEntry(String key, LogEntry entry) {
    Entries entries = new Entries(desk, visitor, view);
    String what = visitor.say(entries.titled(entry)) + ", " + entries.text(entry);
    String when = desk.clock(entry.happenedAt(), visitor);
    return new Frame.Notice(visitor.say(key, when, what), List.of(), Optional.of(address(entry)));
  }
}
