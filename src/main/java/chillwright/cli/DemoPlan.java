package chillwright.cli;

import chillwright.core.log.LotId;
import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.PlanFile;
import chillwright.service.Kitchen;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;

/**
 * The event of the demo kitchen, moved with the sample logs: by whole days, so that an evening
 * stays an evening.
 */
final class DemoPlan {
  private static final String CODE = "choir-evening";

  /** The dish that the sample logs have begun, and its lot there. */
  private static final String BEGUN = "Ridge bean chili";

  private static final LotId LOT = new LotId("VC-1124");

  private DemoPlan() {}

  /** Keeps the plan in a kitchen that has the sample logs. */
  static void load(Kitchen kitchen) {
    kitchen.plans().save(CODE, moved(kitchen.now(), kitchen.zone()));
    kitchen.dishLots().link(CODE, BEGUN, List.of(LOT));
  }

  private static String moved(Instant now, ZoneId zone) {
    ObjectNode plan = read();
    OffsetDateTime written = DemoLog.WRITTEN_FOR.atOffset(moment(plan, "serving").getOffset());
    long days = ChronoUnit.DAYS.between(written.toLocalDate(), now.atZone(zone).toLocalDate());
    for (String key : new String[] {"from", "serving"}) {
      plan.put(
          key,
          moment(plan, key)
              .toLocalDateTime()
              .plusDays(days)
              .atZone(zone)
              .format(DateTimeFormatter.ISO_OFFSET_DATE_TIME));
    }
    return plan.put("zone", zone.getId()).toPrettyString();
  }

  private static OffsetDateTime moment(ObjectNode plan, String key) {
    return OffsetDateTime.parse(plan.get(key).asText());
  }

  private static ObjectNode read() {
    String file = "/sample-logs/plans/" + CODE + ".yaml";
    try (InputStream bytes = DemoPlan.class.getResourceAsStream(file)) {
      String text = new String(bytes.readAllBytes(), StandardCharsets.UTF_8);
      return PlanFile.tree(text).deepCopy();
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    } catch (BrokenRules broken) {
      throw new IllegalStateException("the plan that is shipped is a plan", broken);
    }
  }
}
