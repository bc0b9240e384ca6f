package chillwright.service;

import chillwright.core.log.Admission;
import chillwright.core.log.Incoming;
import chillwright.core.log.Intake;
import chillwright.core.log.LogEntry;
import chillwright.storage.Session;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;

/**
 * Rows held against what is stored, within one transaction.
 *
 * @param before what was stored before them
 */
record Intaking(StoredLog before, Admission admission) {
  static Intaking of(Session session, Judge judge, List<Incoming> rows, Instant now) {
    return of(session, judge, new LastJudged(), rows, now);
  }

  /** The same, with the lots at hand that were written last. */
  static Intaking of(
      Session session, Judge judge, LastJudged last, List<Incoming> rows, Instant now) {
    List<Incoming> completed =
        AnnouncedLots.complete(session, last, SpelledPlaces.in(session, rows));
    StoredLog before = StoredLog.of(session, last, completed);
    Intake intake = new Intake(before, judge.keepingList(), judge.zone(), now);
    return new Intaking(before, intake.admit(completed));
  }

  /** The new entries. */
  List<LogEntry> added() {
    return Stream.concat(
            admission.lots().stream().flatMap(lot -> lot.added().stream()),
            admission.ofPlaces().stream())
        .toList();
  }
}
