package chillwright.web.pages;

import chillwright.core.kitchen.AllergenNaming;
import chillwright.core.kitchen.AllergenNaming.Why;
import chillwright.core.kitchen.LabelsMade;
import chillwright.core.log.HandOut;
import chillwright.service.Recall;
import chillwright.service.Recall.Recalled;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** What bears an allergen, in words. */
final class RecallWords {
  private final Desk desk;
  private final Visitor visitor;

  RecallWords(Desk desk, Visitor visitor) {
    this.desk = desk;
    this.visitor = visitor;
  }

  /** What the answer goes by. */
  List<String> basis() {
    return List.of(visitor.say("recall.basis"), visitor.say("recall.what-to-do"));
  }

  /** The foods because of which these lots bear it, or may, each with the reason. */
  List<String> foods(Recall recall, List<Recalled> lots) {
    Set<String> because =
        lots.stream().flatMap(lot -> lot.foods().stream()).collect(Collectors.toSet());
    List<AllergenNaming> foods =
        recall.foods().stream().filter(naming -> because.contains(naming.food())).toList();
    List<String> says = new ArrayList<>();
    foods.stream()
        .filter(naming -> naming.why() != Why.NOT_ON_FILE)
        .forEach(naming -> says.add(says(naming)));
    List<String> unknown =
        foods.stream()
            .filter(naming -> naming.why() == Why.NOT_ON_FILE)
            .map(AllergenNaming::food)
            .toList();
    if (!unknown.isEmpty()) {
      says.add(visitor.say("recall.not-on-file", String.join(" \u00b7 ", unknown)));
    }
    return says;
  }

  private String says(AllergenNaming naming) {
    String since = naming.since().map(at -> desk.moment(at, visitor)).orElse("");
    return switch (naming.why()) {
      case NAMED ->
          visitor.say(
              naming.isCertain() ? "recall.named" : "recall.named.unsure", naming.food(), since);
      case NAMED_BEFORE -> visitor.say("recall.named-before", naming.food(), since);
      case INGREDIENTS ->
          visitor.say("recall.ingredients", naming.food(), naming.word().orElse(""));
      case NOT_ON_FILE -> visitor.say("recall.not-on-file", naming.food());
    };
  }

  /** What it has to do with the allergen, and what labels did not name. */
  List<String> notes(Recalled lot) {
    List<String> notes = new ArrayList<>();
    notes.add(visitor.say("recall.by", String.join(" \u00b7 ", lot.foods())));
    if (lot.beganBeforeNaming()) {
      String from = desk.moment(lot.namedFrom().orElseThrow(), visitor);
      notes.add(visitor.say(lot.isCertain() ? "recall.before" : "recall.before.unsure", from));
    }
    LabelsMadeWords words = new LabelsMadeWords(desk, visitor);
    if (!lot.labels(false).isEmpty()) {
      notes.add(visitor.say("recall.labels.without", words.times(lot.labels(false))));
    }
    if (!lot.labels(true).isEmpty()) {
      notes.add(visitor.say("recall.labels.naming", words.times(lot.labels(true))));
    }
    if (lot.isLabelsCut()) {
      notes.add(visitor.say("recall.labels.cut", LabelsMade.MOST));
    }
    return notes;
  }

  /** That portions left with labels that did not name it; blank where that is not known. */
  String early(Recalled lot, HandOut out) {
    if (lot.isUnnamed(out)) {
      return " \u2013 " + visitor.say("recall.unnamed");
    }
    boolean isEarly = out.isGiven() && lot.isBeforeNaming(out.entry().happenedAt());
    return isEarly ? " \u2013 " + visitor.say("recall.early") : "";
  }
}
