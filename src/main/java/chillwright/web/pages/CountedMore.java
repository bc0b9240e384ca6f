package chillwright.web.pages;

import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.PutBack;
import chillwright.core.log.Word;
import chillwright.service.LotView;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * Tells, where more was counted than the log says, how the log is mended: portions come from its
 * entries alone, so one of them is wrong or missing.
 */
record CountedMore(Desk desk, LotView view, Visitor visitor) {
  private static final String MORE = "more";

  /** So many takings are offered, the last first. */
  private static final int OFFERED = 3;

  /** The address of a page that is to tell it. */
  static String on(String page) {
    return page + (page.contains("?") ? "&" : "?") + MORE + "=counted";
  }

  /** The ways; none where nothing was counted just now. */
  List<Frame.Notice> notices(Context context) {
    List<LogEntry> own = view.judged().map(judged -> judged.timeline().own()).orElse(List.of());
    if (context.queryParam(MORE) == null || own.isEmpty()) {
      return List.of();
    }
    int left = view.state().portions().left().orElse(0);
    List<Frame.Notice> notices = new ArrayList<>();
    notices.add(
        new Frame.Notice(visitor.say("share.more-counted", left), List.of(), Optional.empty()));
    notices.add(made(own.get(0)));
    List<LogEntry> last = new ArrayList<>(own);
    Collections.reverse(last);
    last.stream()
        .filter(entry -> entry.word() == Word.PORTIONS && !isForLot(entry))
        .limit(OFFERED)
        .forEach(entry -> notices.add(ofEntry("share.more-counted.taken", entry)));
    List<String> parts =
        desk.kitchen().lots().putBacks(view.state().lot()).stream()
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
  private Frame.Notice made(LogEntry first) {
    boolean isMade = first.word() == Word.COOKED || first.word() == Word.PREPARED;
    boolean isPart = view.sources().size() == 1 && !isMade;
    List<String> sources = view.sources().stream().map(LotId::text).toList();
    return isPart
        ? new Frame.Notice(visitor.say("share.more-counted.part"), sources, Optional.empty())
        : ofEntry("share.more-counted.made", first);
  }

  /** Such portions are in that lot now, and go back from its page. */
  private boolean isForLot(LogEntry entry) {
    List<String> made = view.descendants().stream().map(LotId::text).toList();
    return entry.details().to().filter(made::contains).isPresent();
  }

  private Frame.Notice ofEntry(String key, LogEntry entry) {
    Entries entries = new Entries(desk, visitor, view.entries());
    String what = visitor.say(Entries.title(entry)) + ", " + entries.text(entry);
    String when = desk.clock(entry.happenedAt(), visitor);
    String address = "/lots/" + view.state().lot() + "/correct?entry=" + entry.id();
    return new Frame.Notice(visitor.say(key, when, what), List.of(), Optional.of(address));
  }
}
