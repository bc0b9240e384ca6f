package chillwright.service;

import chillwright.core.kitchen.KnownPlace;
import chillwright.core.kitchen.KnownPlace.Kind;
import chillwright.core.kitchen.Move;
import chillwright.core.log.Admission;
import chillwright.core.log.EntryId;
import chillwright.core.log.Incoming;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Phase;
import chillwright.core.log.Problem;
import chillwright.core.log.Row;
import chillwright.core.log.Timeline;
import chillwright.core.log.Whereabouts;
import chillwright.core.log.Word;
import chillwright.core.rules.OpenCooling;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Holds rows that say no more than where a lot went against what the kitchen said of its places: a
 * lot that was frozen and stands in a refrigerator must not be called frozen.
 */
final class MovedRows {
  private final List<KnownPlace> places;
  private final Judge judge;

  MovedRows(List<KnownPlace> places, Judge judge) {
    this.places = places;
    this.judge = judge;
  }

  static boolean isAmong(List<Incoming> rows) {
    return rows.stream().anyMatch(row -> row instanceof Row told && told.word() == Word.MOVED);
  }

  /**
   * @param rows as they came, in the order of the admission's ids
   * @throws Refused with each row whose place does not leave the food what it is
   */
  void check(List<Incoming> rows, Admission admission) {
    List<Problem> problems = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      Optional<EntryId> id = admission.ids().get(i);
      if (rows.get(i) instanceof Row row && row.word() == Word.MOVED && id.isPresent()) {
        admission.lots().stream()
            .filter(lot -> lot.added().stream().anyMatch(entry -> entry.id().equals(id.get())))
            .flatMap(lot -> problem(row, id.get(), lot).stream())
            .forEach(problems::add);
      }
    }
    if (!problems.isEmpty()) {
      throw new Refused(Refused.Why.FAULTS, problems);
    }
  }

  private Optional<Problem> problem(Row row, EntryId id, Admission.Lot lot) {
    Judge.Judged judged = judge.judge(lot.log(), row.when()).orElseThrow();
    Timeline then = judged.timeline();
    boolean stillCools = OpenCooling.of(then, judged.ruleSet()).isPresent();
    String place = row.details().place().orElseThrow();
    Optional<Kind> there = kind(place);
    if (there.isEmpty()) {
      return Optional.empty();
    }
    Phase phase = then.phase();
    Optional<Word> word = Move.word(phase, hereBefore(then, id), there.get(), stillCools);
    if (word.filter(Word.MOVED::equals).isPresent()) {
      return Optional.empty();
    }
    String instead = word.map(w -> "\"" + w.text() + "\" with this place").orElse("what is done");
    return Optional.of(
        new Problem(
            "place-changes-food",
            row.where().at("place"),
            place,
            "a place where the food stays what it is",
            "Lot %s is logged as %s, and does not stay so in %s (%s). Log %s instead."
                .formatted(lot.log().lot(), phase.word(), place, there.get().key(), instead)));
  }

  private Optional<Kind> hereBefore(Timeline then, EntryId id) {
    List<LogEntry> before =
        then.entries().stream().filter(entry -> !entry.id().equals(id)).toList();
    return Whereabouts.last(before).flatMap(this::kind);
  }

  private Optional<Kind> kind(String place) {
    return places.stream()
        .filter(known -> known.name().equals(place))
        .map(KnownPlace::kind)
        .findFirst();
  }
}
