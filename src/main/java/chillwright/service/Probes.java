package chillwright.service;

import chillwright.core.kitchen.KnownProbe;
import chillwright.core.kitchen.ProbeCheck;
import chillwright.core.kitchen.ProbeCheck.Method;
import chillwright.core.log.LogEntry;
import chillwright.core.measure.Temperature;
import chillwright.logfile.CardCells;
import chillwright.logfile.Cells;
import chillwright.storage.Session;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Thermometers and their checks. A check says what a reading is worth; it changes neither a reading
 * nor a verdict.
 */
public final class Probes {
  private static final int SHOWN = 100;
  private static final List<String> METHODS =
      Arrays.stream(Method.values()).map(Method::key).toList();
  private static final List<String> RESULTS = List.of("passed", "failed");

  private final Kitchen kitchen;

  Probes(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /** A probe in use, with its last check. */
  public record Checked(KnownProbe probe, Optional<ProbeCheck> last) {}

  /**
   * What vouches for the readings that a lot has of one probe.
   *
   * @param last its last check before the last of them
   * @param next its first check after the first of them, if that failed: it may have been off then
   */
  public record Vouched(String probe, Optional<ProbeCheck> last, Optional<ProbeCheck> next) {}

  /** Those in use, by name. */
  public List<Checked> all() {
    Instant now = kitchen.now();
    return kitchen
        .database()
        .read(
            session ->
                session.probes().probes().stream()
                    .map(p -> new Checked(p, session.probes().lastBefore(p.name(), now)))
                    .toList());
  }

  /** The checks of a probe, the newest first; of one that is not described, too. */
  public List<ProbeCheck> checks(String probe) {
    return kitchen.database().read(session -> session.probes().checks(probe, SHOWN));
  }

  /** For each probe that these entries name beside a reading. */
  public List<Vouched> vouched(List<LogEntry> entries) {
    return kitchen.database().read(session -> vouched(session, entries));
  }

  private static List<Vouched> vouched(Session session, List<LogEntry> entries) {
    Map<String, List<Instant>> read = new TreeMap<>();
    for (LogEntry entry : entries) {
      entry
          .details()
          .probe()
          .filter(probe -> entry.temperature().isPresent())
          .ifPresent(p -> read.computeIfAbsent(p, n -> new ArrayList<>()).add(entry.happenedAt()));
    }
    List<Vouched> vouched = new ArrayList<>();
    read.forEach(
        (probe, moments) -> {
          Instant first = moments.stream().min(Instant::compareTo).orElseThrow();
          Instant last = moments.stream().max(Instant::compareTo).orElseThrow();
          vouched.add(
              new Vouched(
                  probe,
                  session.probes().lastBefore(probe, last),
                  session.probes().firstAfter(probe, first).filter(check -> !check.passed())));
        });
    return vouched;
  }

  /**
   * Notes that a probe was checked, now: the cell "method" says against what, "reading" what it
   * showed, "result" whether it passed, "by" who did it. In ice water the reading tells by itself;
   * otherwise the person has to, since water boils lower the higher a kitchen lies.
   *
   * @throws Refused with every fault, or where the key was used for another request
   */
  public ProbeCheck check(String name, Map<String, String> given, Optional<OnceKey> key) {
    Map<String, String> told = new HashMap<>(given);
    told.put("name", name);
    CardCells cells = new CardCells(told);
    String probe = cells.needed("name", Cells.LONGEST_TEXT);
    if (cells.given("method").isEmpty()) {
      cells.missing("method", String.join(", ", METHODS));
    }
    Method method = cells.choice("method", METHODS, Method::ofKey).orElse(Method.REFERENCE);
    Optional<Temperature> shown = cells.temperature("reading");
    Optional<Boolean> passed = passed(cells, probe, method, shown);
    ProbeCheck check =
        new ProbeCheck(
            probe,
            method,
            shown,
            passed.orElse(false),
            cells.needed("by", SetUp.LONGEST_INITIALS),
            cells.lines("note", Cells.LONGEST_NOTE),
            kitchen.now());
    if (!cells.problems().isEmpty()) {
      throw new Refused(Refused.Why.FAULTS, cells.problems());
    }
    return kitchen.database().write(session -> add(session, check, key));
  }

  private static ProbeCheck add(Session session, ProbeCheck check, Optional<OnceKey> key) {
    if (key.flatMap(k -> Logbook.answered(session, k)).isPresent()) {
      return session.probes().lastBefore(check.probe(), check.at()).orElse(check);
    }
    session.probes().add(check);
    key.ifPresent(k -> Logbook.remember(session, k, check.at(), Optional.empty(), List.of()));
    return check;
  }

  private Optional<Boolean> passed(
      CardCells cells, String probe, Method method, Optional<Temperature> shown) {
    Optional<Boolean> told =
        cells.choice(
            "result",
            RESULTS,
            word -> RESULTS.contains(word) ? Optional.of(word.equals("passed")) : Optional.empty());
    if (method != Method.ICE_POINT || shown.isEmpty()) {
      boolean isMisread = shown.isEmpty() && !cells.given("reading").isEmpty();
      if (cells.given("result").isEmpty() && !isMisread) {
        cells.missing("result", String.join(", ", RESULTS));
      }
      return told;
    }
    KnownProbe known =
        kitchen
            .database()
            .read(session -> session.probes().probe(probe))
            .orElse(new KnownProbe(probe, KnownProbe.Scales.BOTH, Optional.empty()));
    boolean isAccurate = known.isAccurateAtIcePoint(shown.get());
    if (!isAccurate && told.filter(Boolean::booleanValue).isPresent()) {
      cells.refuse(
          "result",
          "beyond-accuracy",
          "failed",
          "%s in ice water is beyond %s: this check failed. Adjust the probe and check it again."
              .formatted(shown.get().text(), known.scales().tolerance()));
    }
    return told.isPresent() ? told : Optional.of(isAccurate);
  }
}
