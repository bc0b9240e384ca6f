package chillwright.web;

import chillwright.core.ahead.Ahead;
import chillwright.core.log.Problem;
import chillwright.core.log.Problem.Where.InField;
import chillwright.print.Language;
import chillwright.rulebook.RuleBook;
import chillwright.service.Kitchen;
import chillwright.service.ahead.BadQuestion;
import chillwright.service.ahead.KitchenFoods;
import chillwright.service.ahead.Parameter;
import chillwright.service.ahead.Question;
import chillwright.service.ahead.Setting;
import chillwright.web.answers.AheadAnswers;
import chillwright.web.answers.Answers;
import io.javalin.http.Context;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Questions asked before cooking; nothing is stored. */
final class AheadHandlers {
  private static final String RULE_SET = "ruleSet";

  private final Kitchen kitchen;

  AheadHandlers(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  void answer(Context context, Question question) {
    Accept.best(context, Accept.JSON);
    List<String> names = new ArrayList<>();
    question.parameters().stream().map(Parameter::name).forEach(names::add);
    names.add(RULE_SET);
    Query query = Query.of(context, names.toArray(String[]::new));
    Map<String, String> given = new LinkedHashMap<>();
    for (Parameter parameter : question.parameters()) {
      query.line(parameter.name()).ifPresent(text -> given.put(parameter.name(), text));
    }
    RuleBook book = ruleBook(query);
    query.requireFaultless();
    ZonedDateTime now = kitchen.now().atZone(kitchen.zone());
    Setting setting = Setting.of(kitchen.library(), book, now).with(new KitchenFoods(kitchen));
    Answer.json(
        context, AheadAnswers.of(answered(question, given, setting), book, Language.ENGLISH));
  }

  private RuleBook ruleBook(Query query) {
    return query
        .read(
            RULE_SET, "unknown-rule-set", "an id of /api/v1/rule-sets", kitchen.library()::ruleBook)
        .orElseGet(() -> kitchen.judge().book());
  }

  private static Ahead answered(Question question, Map<String, String> given, Setting setting) {
    try {
      return question.answer(given, setting);
    } catch (BadQuestion bad) {
      throw new RequestFault(
          RequestFault.WRONG, bad.problems().stream().map(AheadHandlers::fault).toList());
    }
  }

  private static Answers.Fault fault(Problem problem) {
    InField field = (InField) problem.where();
    return new Answers.Fault(
        problem.code(),
        new Answers.InParameter(field.pointer()),
        problem.given(),
        problem.allowed(),
        problem.says());
  }
}
