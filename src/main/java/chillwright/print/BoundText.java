package chillwright.print;

import chillwright.core.plan.Bound;
import chillwright.core.plan.Plan;
import chillwright.core.rules.Rule;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** Between when and when something of a dish happens, and why, in words. */
record BoundText(PlanText text) {
  /** All of a plan, after a line on what they hold with. */
  List<String> all(Plan plan) {
    return all(plan, bound -> true);
  }

  /** The same of some of them. */
  List<String> all(Plan plan, Predicate<Bound> asked) {
    String with = text.say(plan.isFound() ? "plan.bounds.together" : "plan.bounds.alone");
    Set<Rule> said = new HashSet<>();
    return Stream.concat(
            Stream.of(with),
            plan.bounds().stream().filter(asked).map(bound -> says(bound, brief(bound, said))))
        .toList();
  }

  /** One by itself, with all that its rule says. */
  String says(Bound bound) {
    return says(bound, bound.rule().map(text::cited));
  }

  /** In a list the sentence of a rule stands once, and only where no figure tells as much. */
  private Optional<String> brief(Bound bound, Set<Rule> said) {
    return bound
        .rule()
        .map(
            rule -> {
              String cited = "[" + rule.citation().text() + "]";
              return text.limits()
                  .of(rule)
                  .map(limit -> capital(limit) + ". " + cited)
                  .orElseGet(() -> said.add(rule) ? text.cited(rule) : cited);
            });
  }

  private static String capital(String limit) {
    return limit.substring(0, 1).toUpperCase(Locale.ROOT) + limit.substring(1);
  }

  private String says(Bound bound, Optional<String> rule) {
    String from = bound.from().map(text::moment).orElse("");
    String to = bound.to().map(text::moment).orElse("");
    String source = bound.source().isBlank() ? "" : " " + text.say("plan.source", bound.source());
    return bound.dish()
        + ": "
        + text.say("plan.bound." + bound.kind().text() + way(bound), from, to)
        + rule.map(why -> " " + why).orElse("")
        + source
        + (bound.isClosed() ? " " + text.say("plan.closed") : "");
  }

  private static String way(Bound bound) {
    boolean isStep = bound.kind() != Bound.Kind.HOLD && bound.kind() != Bound.Kind.TABLE;
    boolean isFreezing = bound.kind() == Bound.Kind.FREEZE;
    if (isStep && bound.isEmpty()) {
      return ".late";
    }
    return !bound.isPlanned() || !isStep
        ? ""
        : bound.isMoment() ? ".at" : isFreezing ? ".between" : "";
  }
}
