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
    String out =
        today.open().stream()
            .filter(this::isOut)
            .map(open -> open.lot().food() + " (" + open.lot().lot() + ")")
            .collect(Collectors.joining(", "));
    if (!out.isEmpty()) {
      asked.add(Question.of("out", today.date() + ":" + out, visitor.say("day.out.ask", out)));
    }
    return asked;
  }

  private boolean isOut(Open open) {
    Instant now = desk.kitchen().now();
    return open.wrong().filter(due -> due.finding().at(now) == Verdict.OUT).isPresent();
  }
}
