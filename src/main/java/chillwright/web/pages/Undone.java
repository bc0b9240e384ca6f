package chillwright.web.pages;

import chillwright.core.rules.Verdict;
import chillwright.service.Day;
import chillwright.service.Day.Open;
import chillwright.service.Day.PlaceRound;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** What nobody did of a day, which whoever signs it is asked about. */
record Undone(Desk desk, Visitor visitor) {
  /** Places beyond their limit with nothing done about it, by name. */
  Set<String> places() {
    return desk.kitchen().places().unanswered(desk.kitchen().now()).stream()
        .map(PlaceRound::name)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** A question for each kind. */
  List<Question> asked(Day today) {
    List<Question> asked = new ArrayList<>();
    if (today.unread() > 0) {
      String says = visitor.say("day.unread.ask", today.unread());
      asked.add(Question.of("unread", today.date() + ":" + today.unread(), says));
    }
    String places = String.join(", ", places());
    if (!places.isEmpty()) {
      String says = visitor.say("day.unanswered.ask", places);
      asked.add(Question.of("unanswered", today.date() + ":" + places, says));
    }
    asked.addAll(asked(today, "day.out.ask", Verdict.OUT));
    asked.addAll(asked(today, "day.not-shown.ask", Verdict.NOT_SHOWN));
    return asked;
  }

  /** The question about lots on hand that something is wrong with. */
  private List<Question> asked(Day today, String key, Verdict verdict) {
    String lots =
        today.open().stream()
            .filter(open -> is(verdict, open))
            .map(open -> open.lot().food() + " (" + open.lot().lot() + ")")
            .collect(Collectors.joining(", "));
    return lots.isEmpty()
        ? List.of()
        : List.of(Question.of(verdict.text(), today.date() + ":" + lots, visitor.say(key, lots)));
  }

  private boolean is(Verdict verdict, Open open) {
    Instant now = desk.kitchen().now();
    return open.wrong().filter(due -> due.finding().at(now) == verdict).isPresent();
  }
}
