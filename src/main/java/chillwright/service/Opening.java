package chillwright.service;

import chillwright.rulebook.RuleLibrary;
import java.nio.file.Path;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.Objects;
import java.util.Optional;

/**
 * What a kitchen is opened with.
 *
 * @param file its database; made if it is not there
 * @param zone asked for by name; must be the stored one, if there is one
 * @param ruleSet id asked for by name; must be the stored one, if there is one
 * @param systemZone for a new database, where no zone is asked for
 */
public record Opening(
    Path file,
    Optional<ZoneId> zone,
    Optional<String> ruleSet,
    ZoneId systemZone,
    RuleLibrary library,
    InstantSource clock) {
  /** The rule set of a new database, where none is asked for. */
  public static final String DEFAULT_RULE_SET = "us-food-code-2022";

  public Opening {
    Objects.requireNonNull(file, "file");
    Objects.requireNonNull(systemZone, "systemZone");
    Objects.requireNonNull(library, "library");
    Objects.requireNonNull(clock, "clock");
  }
}
