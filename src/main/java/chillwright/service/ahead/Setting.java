package chillwright.service.ahead;

import chillwright.core.log.KeepingList;
import chillwright.core.rules.RuleSet;
import chillwright.rulebook.Handbook;
import java.time.LocalDateTime;
import java.util.Objects;

/**
 * What questions are answered by.
 *
 * @param rules whose cooling limits count
 * @param keeping the storage categories
 * @param handbook foods, surfaces, pans and kitchen figures
 * @param now what the kitchen's clock shows
 */
public record Setting(RuleSet rules, KeepingList keeping, Handbook handbook, LocalDateTime now) {
  public Setting {
    Objects.requireNonNull(rules, "rules");
    Objects.requireNonNull(keeping, "keeping");
    Objects.requireNonNull(handbook, "handbook");
    Objects.requireNonNull(now, "now");
  }
}
