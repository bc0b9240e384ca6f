package chillwright.service;

import chillwright.core.ahead.Told;
import chillwright.core.forecast.Forecast;
import chillwright.core.keeping.LotState;
import chillwright.core.kitchen.Contents;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Timeline;
import chillwright.core.rules.Acts;
import chillwright.core.rules.Finding;
import chillwright.core.rules.RuleSet;
import chillwright.service.Places.PlaceReading;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * All that is known of a lot.
 *
 * @param sources the lots it came from, in the order they were named
 * @param descendants the lots that came from it, directly or not
 * @param entries its entries as they were written, corrections included, in the order of writing
 * @param placeReadings what was read in its places while it was inside, the newest first, at most
 *     50; evidence without a verdict
 * @param frozenLife what the readings of its freezer cost of its quality, as sentences; no finding
 * @param contents what is in it, as far as the kitchen has it on file
 * @param judged empty until its first entry is written
 */
public record LotView(
    LotState state,
    List<LotId> sources,
    List<LotId> descendants,
    List<LogEntry> entries,
    List<PlaceReading> placeReadings,
    List<Told> frozenLife,
    Contents contents,
    Optional<Judged> judged) {
  /**
   * What was found of it.
   *
   * @param timeline its life in order of time, corrections applied
   * @param ruleSet the rules that judged it, with the figures of its day
   * @param due what is owed, or else settles badly next unless something is done
   * @param forecasts of the limits it still waits for while it cools; no verdict rests on them
   */
  public record Judged(
      Timeline timeline,
      RuleSet ruleSet,
      List<Finding> findings,
      Optional<Finding> due,
      List<Forecast> forecasts) {
    public Judged {
      findings = List.copyOf(findings);
      forecasts = List.copyOf(forecasts);
    }

    /** What the lot is owed, or is not for use by, at a moment. */
    public List<Finding> against(Instant now) {
      return Acts.against(timeline, findings, ruleSet, now);
    }
  }

  public LotView {
    sources = List.copyOf(sources);
    descendants = List.copyOf(descendants);
    entries = List.copyOf(entries);
    placeReadings = List.copyOf(placeReadings);
    frozenLife = List.copyOf(frozenLife);
  }
}
