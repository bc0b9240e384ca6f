package chillwright.cases;

import chillwright.cases.CaseKitchen.Judged;
import chillwright.cases.CaseKitchen.Outcome;
import chillwright.core.log.LotId;
import chillwright.core.log.Problem;
import chillwright.core.log.Problem.Where.InFile;
import chillwright.core.rules.Acts;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Remark;
import chillwright.core.rules.Verdict;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** Compares what came out with what a case expects; only what a case names is compared. */
public final class CaseCheck {
  private static final String NONE = "null";

  private final Case example;
  private final List<String> differences = new ArrayList<>();

  private CaseCheck(Case example) {
    this.example = example;
  }

  /** Every difference, in words; none if the case holds. */
  public static List<String> differences(Case example, Outcome outcome) {
    CaseCheck check = new CaseCheck(example);
    check.problems(outcome.problems());
    for (Node lot : example.expect()) {
      check.lot(lot, outcome);
    }
    return check.differences;
  }

  private void problems(List<Problem> given) {
    List<Problem> unexpected = new ArrayList<>(given);
    for (Node node : example.problems()) {
      node.allow("line", "column");
      Predicate<Problem> expected = problem -> stands(problem, node);
      if (given.stream().noneMatch(expected)) {
        differences.add("no problem at line " + node.text("line") + ": " + given);
      }
      unexpected.removeIf(expected);
    }
    unexpected.forEach(problem -> differences.add("a problem too many: " + problem));
  }

  private static boolean stands(Problem problem, Node node) {
    return problem.where() instanceof InFile place
        && Long.toString(place.line()).equals(node.text("line"))
        && node.optionalText("column").filter(c -> !c.equals(place.column())).isEmpty();
  }

  private void lot(Node node, Outcome outcome) {
    node.allow("lot", "food", "phase", "verdict", "findings", "only", "absent", "keeping");
    Judged judged = outcome.lots().get(new LotId(node.text("lot")));
    if (judged == null) {
      differences.add("nothing came out for lot " + node.text("lot"));
      return;
    }
    String lot = "lot " + node.text("lot");
    if (node.has("food")) {
      same(lot + " food", node, "food", judged.timeline().food().name());
    }
    if (node.has("phase")) {
      same(lot + " phase", node, "phase", judged.timeline().phase().word());
    }
    if (node.has("verdict")) {
      same(lot + " verdict", node, "verdict", worst(judged.findings()));
    }
    node.list("findings").forEach(finding -> finding(lot, finding, judged));
    if (node.has("only") && judged.findings().size() != node.list("findings").size()) {
      differences.add(lot + " has other findings too: " + rules(judged));
    }
    node.texts("absent").forEach(rule -> absent(lot, rule, judged));
    if (node.has("keeping")) {
      differences.addAll(KeepingCheck.differences(lot, node.node("keeping"), judged.keeping()));
    }
  }

  private String worst(List<Finding> findings) {
    return findings.stream()
        .map(finding -> finding.at(example.at()))
        .min(Comparator.naturalOrder())
        .map(Verdict::text)
        .orElse(NONE);
  }

  private void absent(String lot, String rule, Judged judged) {
    for (Finding finding : judged.findings()) {
      String id = finding.rule().id();
      if (id.equals(rule) || (rule.endsWith(".") && id.startsWith(rule))) {
        differences.add(lot + " has a finding of " + id + ", " + say(finding));
      }
    }
  }

  private void finding(String lot, Node node, Judged judged) {
    node.allow(
        "rule",
        "cycle",
        "of",
        "verdict",
        "shortest",
        "longest",
        "estimate",
        "deadline",
        "remarks",
        "without",
        "settles",
        "owed",
        "citation");
    String where = lot + " " + node.text("rule");
    Optional<Finding> found = found(where, node, judged);
    if (found.isEmpty()) {
      return;
    }
    Finding finding = found.get();
    same(where + " verdict", node, "verdict", finding.at(example.at()).text());
    time(where, node, "shortest", finding.elapsed().shortest());
    time(where, node, "longest", finding.elapsed().longest());
    time(where, node, "estimate", finding.elapsed().estimate());
    if (node.has("deadline")) {
      same(where + " deadline", node, "deadline", text(finding.deadline()));
    }
    if (node.has("settles")) {
      same(where + " settles", node, "settles", finding.settlesAt().toString());
    }
    if (node.has("owed")) {
      boolean isOwed =
          !example.at().isBefore(finding.settlesAt()) && Acts.isOwed(finding, judged.timeline());
      same(where + " owed", node, "owed", String.valueOf(isOwed));
    }
    if (node.has("citation")) {
      same(where + " citation", node, "citation", finding.rule().citation().text());
    }
    remarks(where, node, finding);
  }

  private Optional<Finding> found(String where, Node node, Judged judged) {
    List<Finding> all =
        judged.findings().stream()
            .filter(finding -> finding.rule().id().equals(node.text("rule")))
            .toList();
    LotId wanted = node.optionalText("of").map(LotId::new).orElse(judged.timeline().lot());
    List<Finding> own = all.stream().filter(finding -> finding.lot().equals(wanted)).toList();
    List<Finding> candidates = own.isEmpty() && !node.has("of") ? all : own;
    int cycle = node.optionalText("cycle").map(Integer::parseInt).orElse(1);
    if (candidates.size() < cycle || (candidates.size() > 1 && !node.has("cycle"))) {
      differences.add(where + ": " + candidates.size() + " findings, of " + rules(judged));
      return Optional.empty();
    }
    return Optional.of(candidates.get(cycle - 1));
  }

  private void remarks(String where, Node node, Finding finding) {
    List<String> given = finding.remarks().stream().map(Remark::key).toList();
    for (String remark : node.texts("remarks")) {
      if (!given.contains(remark)) {
        differences.add(where + " lacks the remark " + remark + ", it has " + given);
      }
    }
    for (String remark : node.texts("without")) {
      if (given.contains(remark)) {
        differences.add(where + " has the remark " + remark);
      }
    }
  }

  private void time(String where, Node node, String key, Optional<Duration> given) {
    if (!node.has(key)) {
      return;
    }
    Optional<Duration> expected = node.optionalText(key).map(Duration::parse);
    if (!isClose(expected, given)) {
      differences.add(where + " " + key + ": expected " + expected + ", came out " + given);
    }
  }

  /** Equal within the case's tolerance, or both missing. */
  private boolean isClose(Optional<Duration> expected, Optional<Duration> given) {
    if (expected.isEmpty() || given.isEmpty()) {
      return expected.equals(given);
    }
    return expected.get().minus(given.get()).abs().compareTo(example.tolerance()) <= 0;
  }

  private void same(String where, Node node, String key, String given) {
    String expected = node.optionalText(key).orElse(NONE);
    if (!expected.equals(given)) {
      differences.add(where + ": expected " + expected + ", came out " + given);
    }
  }

  private static String text(Optional<Instant> moment) {
    return moment.map(Instant::toString).orElse(NONE);
  }

  private List<String> rules(Judged judged) {
    return judged.findings().stream()
        .map(finding -> finding.rule().id() + " of " + finding.lot() + " " + say(finding))
        .toList();
  }

  private String say(Finding finding) {
    return finding.at(example.at()).text() + " " + finding.elapsed() + " " + finding.remarks();
  }
}
