package chillwright.web.pages;

import chillwright.core.log.Problem;
import chillwright.core.log.Problem.Where.InField;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Faults of what is to be planned, each in words beside its field.
 *
 * @param at by the place in the tree, such as "/dishes/0/make/1/minutes"
 * @param others those of no field that a form shows
 * @param asked what a tick beside its field answers, by the place in the tree
 * @param lots what was typed where the lots of a dish are named; of no place in the tree
 * @param typed lengths of time with their unit, as they were typed, by the place in the tree
 */
record PlanFaults(
    Map<String, String> at,
    List<String> others,
    Map<String, Question> asked,
    Map<String, String> lots,
    Map<String, String> typed) {
  static final PlanFaults NONE = new PlanFaults(Map.of(), List.of(), Map.of(), Map.of(), Map.of());

  /** The form in which the lots of a dish are named. */
  static final String LOTS = "/batches";

  /** What may be wrong with a field, by its last name; amounts have one sentence for all. */
  private static final Set<String> NAMED =
      Set.of(
          "serving",
          "guests",
          "name",
          "dish",
          "category",
          "route",
          "portions",
          "portionsPerGuest",
          "ingredients",
          "ingredientsFor",
          "portionFluidOunces",
          "portionMillilitres",
          "pan",
          "panDepthInches",
          "due",
          "madeBy",
          "step",
          "minutes",
          "thawHours",
          "holdMinutes",
          "make",
          "days",
          "from",
          "to");

  PlanFaults {
    at = Map.copyOf(at);
    others = List.copyOf(others);
    asked = Map.copyOf(asked);
    lots = Map.copyOf(lots);
    typed = Map.copyOf(typed);
  }

  /** The same, with the lengths of time of a form as they were typed. */
  PlanFaults as(Map<String, String> lengths) {
    return new PlanFaults(at, others, asked, lots, lengths);
  }

  static PlanFaults of(List<Problem> problems, Visitor visitor) {
    Map<String, String> at = new LinkedHashMap<>();
    List<String> others = new ArrayList<>();
    for (Problem problem : problems) {
      String pointer = problem.where() instanceof InField in ? in.pointer() : "";
      if (problem.code().equals("unknown-thing")) {
        others.add(visitor.say("plans.fault.thing", last(pointer)));
      } else if (pointer.matches(".*/ingredients(/.*)?")) {
        String list = pointer.replaceFirst("/ingredients.*", "/ingredients");
        at.putIfAbsent(list, visitor.say("plans.fault.ingredients"));
      } else if (isAmount(pointer)) {
        at.putIfAbsent(pointer, visitor.say("plans.fault.amount"));
      } else if (problem.code().equals("doubled-name")) {
        at.putIfAbsent(pointer, visitor.say("plans.fault.doubled"));
      } else if (NAMED.contains(last(pointer))) {
        at.putIfAbsent(field(pointer), visitor.say("plans.fault." + last(pointer)));
      } else {
        others.add(visitor.language().fault(problem.says()));
      }
    }
    if (!at.isEmpty()) {
      // The marks stand far down; what was not saved must not be missed.
      others.add(0, visitor.say("plans.not-saved"));
    }
    return new PlanFaults(at, others, Map.of(), Map.of(), Map.of());
  }

  /** What can hardly be is not saved before it is answered. */
  static PlanFaults asking(Map<String, Question> asked, Visitor visitor) {
    Map<String, String> at = new LinkedHashMap<>();
    asked.forEach((place, question) -> at.put(place, question.says()));
    return new PlanFaults(at, List.of(visitor.say("plans.asked")), asked, Map.of(), Map.of());
  }

  /** A dish that was typed and is not sent yet, since it is read in another language first. */
  static PlanFaults unsaved(String dish, Visitor visitor) {
    String says = visitor.say("plans.dish.unsaved");
    return new PlanFaults(
        Map.of(dish + "/dish", says), List.of(says), Map.of(), Map.of(), Map.of());
  }

  /** Lots that cannot serve a dish, beside the field in which they were typed. */
  static PlanFaults ofLots(String says, String dish, String typed, Visitor visitor) {
    return new PlanFaults(
        Map.of(LOTS + "/lot", says),
        List.of(visitor.say("plans.not-saved")),
        Map.of(),
        Map.of("dish", dish, "lot", typed),
        Map.of());
  }

  /** The same, with the tick that answers it. */
  PlanFaults with(Question question) {
    return new PlanFaults(at, others, Map.of(LOTS + "/lot", question), lots, typed);
  }

  private static boolean isAmount(String pointer) {
    return pointer.matches(".*/(has|keeps|uses)/[^/]+");
  }

  private static String last(String pointer) {
    return pointer.substring(pointer.lastIndexOf('/') + 1);
  }

  /** A list without a row is at fault in its first row. */
  private static String field(String pointer) {
    return last(pointer).equals("make") ? pointer + "/0/step" : pointer;
  }

  /** The keys of all sentences of this class. */
  static List<String> keys() {
    List<String> keys = new ArrayList<>(NAMED.stream().map(name -> "plans.fault." + name).toList());
    keys.addAll(List.of("plans.fault.thing", "plans.fault.amount", "plans.fault.doubled"));
    return keys;
  }

  boolean isEmpty() {
    return at.isEmpty() && others.isEmpty();
  }

  /** Whether a field of that part of the tree is at fault. */
  boolean isIn(String pointer) {
    return at.keySet().stream().anyMatch(place -> place.startsWith(pointer + "/"));
  }
}
