package chillwright.web.pages;

import chillwright.core.log.Ending;
import chillwright.core.log.HandOut;
import chillwright.core.log.HandOut.Kind;
import chillwright.core.log.LogEntry;
import chillwright.service.Tracing.Traced;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What left a lot, in words. */
final class OutWords {
  private static final Set<Kind> TO_LOTS = EnumSet.of(Kind.OTHER_LOT, Kind.PUT_BACK);

  private final Desk desk;
  private final Visitor visitor;

  OutWords(Desk desk, Visitor visitor) {
    this.desk = desk;
    this.visitor = visitor;
  }

  /** How the lot that was asked for ended. */
  static Optional<Ending> ending(List<Traced> lots) {
    return lots.stream().filter(Traced::isAsked).findFirst().flatMap(Traced::ending);
  }

  /** When, what became of it, how much, who got it, and what was noted. */
  String line(HandOut out) {
    LogEntry entry = out.entry();
    List<String> parts = new ArrayList<>();
    String who = Isolated.of(entry.details().to().orElse(""));
    parts.add(visitor.say("trace.kind." + out.kind().key(), who));
    if (entry.details().portions().isPresent()) {
      parts.add(visitor.say("entry.portions") + " " + entry.details().portions().getAsInt());
    }
    if (!who.isEmpty() && !TO_LOTS.contains(out.kind())) {
      parts.add(visitor.say("entry.to") + " " + who);
    }
    entry.note().map(Isolated::of).ifPresent(parts::add);
    return desk.moment(entry.happenedAt(), visitor) + ": " + String.join(", ", parts);
  }

  /** Who got some of a lot or of its parts, the last first: where it left the kitchen. */
  List<String> given(List<Traced> lots) {
    record Given(HandOut out, Traced lot) {}

    return lots.stream()
        .filter(lot -> lot.isAsked() || lot.isPart())
        .flatMap(lot -> lot.handOuts().stream().map(out -> new Given(out, lot)))
        .filter(given -> given.out().isGiven())
        .filter(given -> given.out().entry().details().to().isPresent())
        .sorted((a, b) -> b.out().entry().happenedAt().compareTo(a.out().entry().happenedAt()))
        .map(
            given ->
                given.lot().isAsked()
                    ? to(given.out().entry())
                    : visitor.say(
                        "lot.given.of-part", to(given.out().entry()), given.lot().lot().lot()))
        .toList();
  }

  private String to(LogEntry entry) {
    String who = Isolated.of(entry.details().to().orElseThrow());
    String told =
        entry.details().portions().isPresent()
            ? visitor.say("lot.given.portions", who, entry.details().portions().getAsInt())
            : who;
    return desk.moment(entry.happenedAt(), visitor) + ": " + told;
  }
}
