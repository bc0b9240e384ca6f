package chillwright.web;

import chillwright.core.log.Category;
import chillwright.core.log.Incoming;
import chillwright.core.log.KeepingList;
import chillwright.logfile.Cells;
import chillwright.rulebook.RuleBook;
import chillwright.service.Judge;
import chillwright.service.KeepQuestion;
import chillwright.service.Kitchen;
import chillwright.service.LogCheck;
import chillwright.service.LogCheck.Checked;
import chillwright.service.Page;
import chillwright.web.answers.AnswerMaker;
import chillwright.web.answers.CategoryAnswers;
import io.javalin.http.Context;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/** Questions answered from what they bring along; nothing is stored. */
final class CheckHandlers {
  private final Kitchen kitchen;

  CheckHandlers(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /** Faults of single rows are part of the answer, as of a checked file; others are refused. */
  void check(Context context) {
    Accept.best(context, Accept.JSON);
    Query.none(context);
    Fields fields =
        new Fields(Body.of(context).json(), "", List.of("rows", "at", "zone", "ruleSet"));
    Instant now = kitchen.now();
    Optional<Instant> at =
        fields.read("at", "bad-time", Moments.timeAllowed(kitchen.zone()), Moments::time);
    Optional<ZoneId> zone = fields.read("zone", "bad-zone", Moments.ZONE_ALLOWED, Moments::zone);
    RuleBook book = ruleBook(fields);
    List<Incoming> rows =
        new EntryRows(new Cells(now, kitchen.zone())).list(fields, "rows", EntryRows::asGiven);
    ZoneId used = zone.orElse(kitchen.zone());
    Instant moment = at.orElse(now);
    Checked checked =
        new LogCheck(new Judge(book, kitchen.library().keepingList(), used), now)
            .check(rows, moment);
    Answer.json(context, new AnswerMaker(used, moment).check(book, checked));
  }

  private RuleBook ruleBook(Fields fields) {
    List<String> ids = kitchen.library().ruleBooks().stream().map(RuleBook::id).toList();
    return fields
        .read("ruleSet", "unknown-rule-set", String.join(", ", ids), kitchen.library()::ruleBook)
        .orElse(kitchen.judge().book());
  }

  void keep(Context context) {
    Accept.best(context, Accept.JSON);
    Query.none(context);
    Fields fields =
        new Fields(
            Body.of(context).json(),
            "",
            List.of("category", "made", "opened", "until", "frozen", "thawed", "ruleSet"));
    RuleBook book = ruleBook(fields);
    KeepQuestion question = question(fields);
    Instant now = kitchen.now();
    KeepQuestion.Answer answer =
        question.answer(book, kitchen.zone(), LocalDate.ofInstant(now, kitchen.zone()));
    Answer.json(
        context, new AnswerMaker(kitchen.zone(), now).keep(book, question.category(), answer));
  }

  private KeepQuestion question(Fields fields) {
    String allowed = "a key of /api/v1/keeping";
    if (fields.node("category").isEmpty()) {
      fields.missing("category", allowed);
    }
    Optional<Category> category = category(fields, allowed);
    Optional<LocalDate> made = date(fields, "made");
    Optional<LocalDate> opened = date(fields, "opened");
    Optional<LocalDate> until = date(fields, "until");
    Optional<LocalDate> frozen = date(fields, "frozen");
    Optional<LocalDate> thawed = date(fields, "thawed");
    fields.requireFaultless();
    KeepQuestion question =
        new KeepQuestion(category.orElseThrow(), made, opened, until, frozen, thawed);
    question
        .wrongDates()
        .forEach(
            wrong ->
                fields.refuse(
                    wrong.name(),
                    "impossible-date",
                    wrong.given().toString(),
                    wrong.allowed(),
                    "%s %s %s.".formatted(wrong.name(), wrong.given(), wrong.says())));
    fields.requireFaultless();
    return question;
  }

  private Optional<Category> category(Fields fields, String allowed) {
    KeepingList list = kitchen.library().keepingList();
    Optional<String> key = fields.text("category");
    key.filter(given -> list.category(given).isEmpty())
        .ifPresent(
            given ->
                fields.refuse(
                    "category",
                    "unknown-category",
                    given,
                    allowed,
                    "\"%s\" is no category here.%s"
                        .formatted(Shown.text(given), list.question(given))));
    return key.flatMap(list::category);
  }

  private static Optional<LocalDate> date(Fields fields, String name) {
    return fields.read(name, "bad-date", Moments.DATE_ALLOWED, Moments::date);
  }

  void categories(Context context) {
    Accept.best(context, Accept.JSON);
    Page.Wanted page = Query.of(context, Query.LIMIT, Query.CURSOR).page(Page.MOST);
    Answer.json(
        context,
        Pages.listing(CategoryAnswers.all(kitchen.library().keepingList()), "categories", page));
  }
}
