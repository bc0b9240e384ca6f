package chillwright.service.ahead;

import chillwright.core.log.KeepingList;
import chillwright.core.rules.RuleSet;
import chillwright.rulebook.Handbook;
import java.time.LocalDateTime;
import java.time.ZonedDateTime;
import java.util.Objects;

/**
 * What questions are answered by.
 *
 * @param rules whose cooling limits count
 * @param keeping the storage categories
 * @param handbook foods, surfaces, pans and kitchen figures
 * @param asked when it is asked, in the kitchen's zone
 */
public record Setting(RuleSet rules, KeepingList keeping, Handbook handbook, ZonedDateTime asked) {
  public Setting {
    Objects.requireNonNull(rules, "rules");
    Objects.requireNonNull(keeping, "keeping");
    Objects.requireNonNull(handbook, "handbook");
    Objects.requireNonNull(asked, "asked");
  }

  /** What the kitchen's clock shows. */
  public LocalDateTime now() {
    return asked.toLocalDateTime();
  }
}
