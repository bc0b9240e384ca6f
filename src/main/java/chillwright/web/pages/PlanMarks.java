package chillwright.web.pages;

import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Leads from the top of a page to each field of a plan that is at fault. */
final class PlanMarks {
  private static final Pattern OF_DISH = Pattern.compile("/dishes/(\\d+)/(.*)");
  private static final Pattern OF_STEP = Pattern.compile("(make|finish)/(\\d+)/.*");

  private PlanMarks() {}

  /** In the order of the page, each by the id of its field. */
  static List<Choice> of(PlanTree tree, PlanFaults faults, Visitor visitor) {
    return faults.at().entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .map(at -> new Choice(id(at.getKey()), title(at.getKey(), tree, visitor, at.getValue())))
        .toList();
  }

  /** The ids that {@link PlanForm} gives. */
  private static String id(String pointer) {
    boolean isPlaced = pointer.startsWith("/kitchen/") || pointer.startsWith(PlanFaults.LOTS);
    String form = isPlaced ? pointer : "/event" + pointer;
    Matcher dish = OF_DISH.matcher(pointer);
    return (dish.matches() ? "d" + dish.group(1) + "/" + dish.group(2) : form.substring(1))
        .replace('/', '-');
  }

  private static String title(String pointer, PlanTree tree, Visitor visitor, String fault) {
    Matcher of = OF_DISH.matcher(pointer);
    if (!of.matches()) {
      return fault;
    }
    String typed = tree.dishes().get(Integer.parseInt(of.group(1)));
    Matcher step = OF_STEP.matcher(of.group(2));
    String row =
        step.matches() ? visitor.say("plans.step", Integer.parseInt(step.group(2)) + 1) : "";
    String where =
        Stream.of(typed.isBlank() ? visitor.say("plans.dish.add") : typed, row)
            .filter(part -> !part.isEmpty())
            .collect(Collectors.joining(", "));
    return where + ": " + fault;
  }
}
