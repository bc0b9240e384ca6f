package chillwright.cli;

import chillwright.core.rules.RuleSet;
import chillwright.service.CardKind;
import chillwright.service.Kitchen;
import chillwright.service.SetUp;
import chillwright.web.answers.ProbeAnswers;
import chillwright.web.answers.SetUpAnswers;
import java.util.List;

/** What a kitchen says of itself, as answers. */
final class KitchenCards {
  private final Kitchen kitchen;
  private final SetUp setUp;

  KitchenCards(Kitchen kitchen) {
    this.kitchen = kitchen;
    this.setUp = kitchen.setUp();
  }

  /** The answers that the service gives. */
  List<?> answers(CardKind kind) {
    RuleSet rules = setUp.rulesOfToday();
    return switch (kind) {
      case FOODS -> setUp.foods().stream().map(SetUpAnswers::food).toList();
      case PLACES -> setUp.places().stream().map(p -> SetUpAnswers.place(p, rules)).toList();
      case PEOPLE -> setUp.people().stream().map(SetUpAnswers::person).toList();
      case PROBES ->
          kitchen.probes().all().stream().map(new ProbeAnswers(kitchen.zone())::probe).toList();
    };
  }
}
