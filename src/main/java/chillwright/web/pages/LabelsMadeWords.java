package chillwright.web.pages;

import chillwright.core.kitchen.LabelsMade;
import chillwright.core.log.LotId;
import chillwright.service.LotView;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Labels that were made, in words. */
final class LabelsMadeWords {
  /** So many documents are named one by one. */
  private static final int NAMED = 5;

  private final Desk desk;
  private final Visitor visitor;

  LabelsMadeWords(Desk desk, Visitor visitor) {
    this.desk = desk;
    this.visitor = visitor;
  }

  /** A line for each document of a lot, the newest first. */
  List<String> of(LotId lot) {
    List<LabelsMade> made = desk.kitchen().labels().of(lot);
    List<String> lines = new ArrayList<>(made.stream().map(this::line).toList());
    Collections.reverse(lines);
    if (made.size() >= LabelsMade.MOST) {
      lines.add(visitor.say("labels.made.cut", LabelsMade.MOST));
    }
    return lines;
  }

  /** What labels on boxes of a lot on hand do not name; blank where they name all. */
  String lacking(LotView view) {
    Set<String> names = new LinkedHashSet<>();
    if (view.state().isOnHand()) {
      Instant now = desk.kitchen().now();
      for (LabelsMade last : desk.kitchen().labels().onBoxes(view.state()).last(now)) {
        LabelsMade.Unnamed unnamed = last.unnamed(view.contents());
        names.addAll(ContentsText.names(visitor, unnamed.allergens(), unnamed.others()));
      }
    }
    return names.isEmpty() ? "" : visitor.say("labels.lacking", String.join(", ", names));
  }

  private String line(LabelsMade made) {
    return visitor.say(
        made.leaves() ? "labels.made.leaves" : "labels.made.own",
        desk.moment(made.at(), visitor),
        made.labels(),
        named(made));
  }

  private String named(LabelsMade made) {
    List<String> names =
        ContentsText.names(
            visitor,
            made.allergens(),
            made.others().map(words -> words.lines().toList()).orElse(List.of()));
    return names.isEmpty() ? visitor.say("labels.made.none") : String.join(", ", names);
  }

  /** When such labels were made and how many, the first few; blank for none. */
  String times(List<LabelsMade> made) {
    String named =
        made.stream()
            .limit(NAMED)
            .map(one -> desk.moment(one.at(), visitor) + " (" + one.labels() + ")")
            .collect(Collectors.joining("; "));
    int more = made.stream().skip(NAMED).mapToInt(LabelsMade::labels).sum();
    return more == 0 ? named : named + "; " + visitor.say("labels.made.more", more);
  }
}
