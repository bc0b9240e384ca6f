package chillwright.rulebook;

import chillwright.core.log.Problem;
import chillwright.core.rules.RuleSet;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/**
 * Reads one rule set. A local one is laid over the set it extends: what it leaves out of a rule is
 * taken over from there before the schema looks at it, so one schema serves both.
 */
final class RuleSetReader {
  /** What a local rule may leave out. Its figures and their citation are always its own. */
  private static final List<String> TAKEN_OVER =
      List.of("says", "occasions", "shape", "status", "actions");

  private static final Pattern ID = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");

  private final RuleSetFiles files;
  private final Optional<RuleSetReader> base;
  private final Faults faults;
  private final Map<String, JsonNode> whole = new HashMap<>();
  private final Set<String> ids = new TreeSet<>();
  private final Map<String, DatedRule> rules = new LinkedHashMap<>();
  private final Set<String> own = new LinkedHashSet<>();

  /**
   * @param base the set it extends, already read; empty where it extends none or one that is not
   *     there
   */
  RuleSetReader(RuleSetFiles files, Optional<RuleSetReader> base, Faults faults) {
    this.files = files;
    this.base = base;
    this.faults = faults;
  }

  /** Checks and reads all files; the faults tell what is wrong with them. */
  void read() {
    checkId();
    files.ruleSet().map(SchemaCheck.RULE_SET::faults).ifPresent(faults::addAll);
    base.ifPresent(set -> rules.putAll(set.rules));
    base.ifPresent(set -> whole.putAll(set.whole));
    base.ifPresent(set -> ids.addAll(set.ids));
    files.topics().forEach(this::readTopic);
  }

  private void checkId() {
    if (!ID.matcher(files.id()).matches()) {
      String allowed = "lower-case letters, digits and hyphens, such as example-county";
      faults.add(
          Spot.whole(files.folder(), files.id())
              .fault(
                  "folder-name",
                  allowed,
                  "the folder's name is its rule set's id. Name it with " + allowed + "."));
    }
  }

  private void readTopic(Document topic) {
    List<Spot> items = Spot.whole(topic).at("rules").items();
    Set<String> absent = new LinkedHashSet<>();
    items.forEach(rule -> absent.addAll(takeOver(rule)));
    SchemaCheck.TOPIC.faults(topic).stream()
        .filter(problem -> absent.stream().noneMatch(place -> isIn(problem, place)))
        .forEach(faults::add);
    items.forEach(rule -> readRule(topic, rule));
  }

  private static boolean isIn(Problem problem, String place) {
    return problem.where() instanceof Problem.Where.InField field
        && Spot.isIn(field.pointer(), place);
  }

  /**
   * Fills in from the base set what a local rule leaves out.
   *
   * @return the places that were left out; no fault of theirs is this file's
   */
  private List<String> takeOver(Spot rule) {
    boolean standsAlone = files.ruleSet().isPresent() && files.extendsAt().isEmpty();
    if (standsAlone || !(rule.node() instanceof ObjectNode node)) {
      return List.of();
    }
    List<String> absent = TAKEN_OVER.stream().filter(key -> !rule.has(key)).toList();
    String id = rule.text("id");
    if (base.isPresent() && !base.get().ids.contains(id) && rule.has("id") && !absent.isEmpty()) {
      faults.add(unknownRule(rule, absent));
    }
    Optional.ofNullable(whole.get(id))
        .ifPresent(
            from -> absent.stream().filter(from::has).forEach(k -> node.set(k, from.get(k))));
    return absent.stream().map(key -> rule.at(key).pointer()).toList();
  }

  private Problem unknownRule(Spot rule, List<String> absent) {
    String says =
        "the rule set this one extends has no rule %s to change. Correct the id; for a new rule"
            + " write it whole, also %s.";
    return rule.at("id")
        .fault(
            "unknown-rule",
            String.join(", ", ids),
            says.formatted(rule.text("id"), String.join(", ", absent)));
  }

  private void readRule(Document topic, Spot rule) {
    String id = rule.text("id");
    if (rule.has("id") && !own.add(id)) {
      String says =
          "%s is here twice. Take one of the two out, or put both figures under values of one"
              + " rule, each with its day.";
      faults.add(rule.at("id").fault("id-twice", "an id once", says.formatted(id)));
      return;
    }
    ids.add(id);
    if (faults.anyIn(rule) || !TAKEN_OVER.stream().allMatch(rule::has)) {
      return;
    }
    checkTopic(topic, rule.at("id"));
    Optional<DatedRule> read = new RuleReader(faults).read(rule);
    read.ifPresent(dated -> rules.put(id, dated));
    read.ifPresent(dated -> whole.put(id, rule.node()));
  }

  /** One can guess the file of a rule from its id. */
  private void checkTopic(Document topic, Spot id) {
    String first = id.text().substring(0, id.text().indexOf('.'));
    if (!first.equals(topic.stem())) {
      String says = "the rule %s belongs into %s.yaml. Move it there.".formatted(id.text(), first);
      faults.add(id.fault("wrong-file", topic.stem() + ".<name>", says));
    }
  }

  /** The book; to be asked for only when no file has a fault. */
  RuleBook book() {
    Spot text = Spot.whole(files.ruleSet().orElseThrow());
    RuleBook.About about =
        new RuleBook.About(
            files.id(),
            text.text("title"),
            version(),
            text.text("status"),
            defers(),
            files.extendsAt().map(Spot::text),
            LocalDate.parse(text.text("last_checked")));
    List<Choice> choices = new ArrayList<>();
    settings().forEach((key, setting) -> choices.add(choice(key, setting)));
    Set<String> changed = base.isPresent() ? own : Set.of();
    return new RuleBook(about, values(), choices, List.copyOf(rules.values()), changed);
  }

  /**
   * The version its file declares, and a mark of all that it says with what it takes over, the
   * version of the set it extends included.
   */
  private String version() {
    Fingerprint mark = new Fingerprint();
    base.ifPresent(set -> mark.add(set.version()));
    settings().forEach((key, setting) -> mark.add(key).add(setting.node()));
    rules.keySet().forEach(id -> mark.add(id).add(whole.get(id)));
    String declared = Spot.whole(files.ruleSet().orElseThrow()).text("version");
    return declared + "+" + mark.text();
  }

  private String defers() {
    Spot text = Spot.whole(files.ruleSet().orElseThrow());
    return text.has("defers") ? text.text("defers") : base.orElseThrow().defers();
  }

  /** The settings by key: its own, or those of the set it extends. */
  private Map<String, Spot> settings() {
    Map<String, Spot> settings = new LinkedHashMap<>();
    base.ifPresent(set -> settings.putAll(set.settings()));
    Spot written = Spot.whole(files.ruleSet().orElseThrow()).at("settings");
    written.keys().forEach(key -> settings.put(key, written.at(key)));
    return settings;
  }

  private RuleSet.Settings values() {
    Map<String, Spot> settings = settings();
    return new RuleSet.Settings(
        settings.get("corrective-reheats").at("value").node().intValue(),
        settings.get("freezing-day-counts").at("value").node().booleanValue(),
        settings.get("thawing-day-counts").at("value").node().booleanValue());
  }

  private static Choice choice(String key, Spot setting) {
    return new Choice(
        key, setting.text("value"), setting.text("status"), Figures.citation(setting.at("cite")));
  }
}
