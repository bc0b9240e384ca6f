package chillwright.web;

import chillwright.logfile.LogFile;
import chillwright.rulebook.RuleBook;
import chillwright.service.Imports.Imported;
import chillwright.service.Kitchen;
import chillwright.service.Progress;
import chillwright.web.answers.AnswerMaker;
import chillwright.web.answers.Answers;
import chillwright.web.answers.Answers.Fault;
import io.javalin.http.Context;
import io.javalin.http.Header;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Semaphore;

/** Log files sent whole, and taken in beside all other writes; one at a time. */
final class ImportHandlers {
  /** The most bytes of a file: 2 GiB. */
  static final long LARGEST = 1L << 31;

  /** So many may send at once: one that sends slowly keeps nobody else waiting. */
  private static final int SENDERS = 8;

  private static final String NAME = "name";
  private static final String USUAL_NAME = "import.csv";
  private static final String GOOD_LOTS_ONLY = "goodLotsOnly";

  private final Kitchen kitchen;
  private final Semaphore turn = new Semaphore(1);
  private final Semaphore sending = new Semaphore(SENDERS);

  ImportHandlers(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  void take(Context context) throws IOException {
    Accept.best(context, Accept.JSON);
    Query query = Query.of(context, NAME, GOOD_LOTS_ONLY);
    String name = query.line(NAME).orElse(USUAL_NAME);
    boolean goodLotsOnly = query.flag(GOOD_LOTS_ONLY).orElse(false);
    query.requireFaultless();
    BodyType.require(context, Accept.CSV, "a log file");
    if (turn.availablePermits() == 0 || !sending.tryAcquire()) {
      throw busy(context);
    }
    try (PutAside aside = PutAside.of(context, LARGEST)) {
      takeIn(context, new LogFile(name, aside.file()), goodLotsOnly);
    } finally {
      sending.release();
    }
  }

  private void takeIn(Context context, LogFile file, boolean goodLotsOnly) throws IOException {
    if (!turn.tryAcquire()) {
      throw busy(context);
    }
    try {
      answer(context, kitchen.imports().files(List.of(file), goodLotsOnly, Progress.NONE));
    } finally {
      turn.release();
    }
  }

  private void answer(Context context, Imported imported) {
    if (!imported.isStored()) {
      throw RequestFault.wrong(imported.problems());
    }
    RuleBook book = kitchen.judge().book();
    Answer.json(
        context,
        new Answers.Imported(
            imported.rows(),
            imported.entries(),
            imported.readings(),
            imported.repeats(),
            imported.lots(),
            true,
            Problems.bounded(AnswerMaker.faults(imported.problems())),
            new AnswerMaker(kitchen.zone(), kitchen.now()).time(kitchen.now()),
            new Answers.RuleSetRef(book.id(), book.version()),
            book.defers().strip()));
  }

  private static RequestFault busy(Context context) throws IOException {
    if (Optional.ofNullable(context.header(Header.EXPECT)).isEmpty()) {
      Body.throwAway(context.req().getInputStream());
    }
    return new RequestFault(
        409,
        List.of(
            new Fault(
                "import-running",
                new Answers.InRequest("service"),
                "",
                "one file at a time",
                "Another file is being taken in. Wait until that is done and send this one again;"
                    + " nothing of it was stored.")),
        Map.of(Header.RETRY_AFTER, "10"));
  }
}
