package chillwright.web;

import chillwright.core.log.Incoming;
import chillwright.logfile.Cells;
import chillwright.service.Kitchen;
import chillwright.service.Page;
import chillwright.service.Places.PlaceReading;
import chillwright.service.Written;
import chillwright.web.answers.Answers;
import chillwright.web.answers.EntryAnswers;
import io.javalin.http.Context;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Readings of refrigerators, freezers, hot-holding units and counters. */
final class PlaceHandlers {
  private final Kitchen kitchen;

  PlaceHandlers(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  void list(Context context) {
    Accept.best(context, Accept.JSON);
    Query query = Query.of(context, "place", "from", "to", Query.LIMIT, Query.CURSOR);
    Optional<String> place = query.text("place");
    Optional<Instant> from = query.from("from", kitchen.zone());
    Optional<Instant> to = query.to("to", kitchen.zone());
    Page.Wanted page = query.page(LotHandlers.USUAL_PAGE);
    EntryAnswers answers = new EntryAnswers(kitchen.zone());
    Page<PlaceReading> found = kitchen.places().readings(place, from, to, page);
    Answer.json(
        context,
        new Answers.Listing<>(found.items().stream().map(answers::reading).toList(), found.next()));
  }

  void log(Context context) {
    Accept.best(context, Accept.JSON);
    Query.none(context);
    Body body = Body.of(context);
    List<Incoming> rows =
        new EntryRows(new Cells(kitchen.now(), kitchen.zone()))
            .oneOrMore(body.json(), EntryRows::ofPlace);
    Written written = kitchen.logbook().log(rows, OnceKeys.of(context, body));
    Answer.created(
        context,
        new Answers.ReadingsWritten(
            new EntryAnswers(kitchen.zone()).some(written.entries(), written.record()),
            written.repeats(),
            written.isReplay()));
  }
}
