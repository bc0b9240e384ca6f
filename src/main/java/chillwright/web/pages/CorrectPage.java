package chillwright.web.pages;

import chillwright.core.log.How;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Word;
import chillwright.service.LotView;
import chillwright.service.Refused;
import chillwright.service.Written;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Says which entry of a lot is wrong, and how it should read. */
final class CorrectPage {
  static final String ADDRESS = "/lots/{lot}/correct";

  private final Desk desk;

  CorrectPage(Desk desk) {
    this.desk = desk;
  }

  void show(Context context) {
    Visitor visitor = desk.visitor(context);
    LotPage.view(desk, context, visitor)
        .ifPresent(
            view -> {
              String id = Optional.ofNullable(context.queryParam("entry")).orElse("");
              Optional<LogEntry> entry = CorrectRows.standing(id, view.entries());
              Map<String, String> fields = new HashMap<>();
              entry.ifPresent(found -> fields.putAll(rows(found, view).fields()));
              fields.putIfAbsent("scale", visitor.scaleLetter());
              answer(context, HttpStatus.OK, visitor, view, entry, Filled.with(fields));
            });
  }

  /** Takes the correction, and shows the lot with what came of it, or what is wrong. */
  void take(Context context) {
    Optional<Form> form = desk.form(context);
    if (form.isEmpty()) {
      return;
    }
    Visitor visitor = desk.visitor(context);
    Optional<LotView> view = LotPage.view(desk, context, visitor);
    if (view.isPresent()) {
      take(context, visitor, view.get(), form.get());
    }
  }

  private void take(Context context, Visitor visitor, LotView view, Form form) {
    Optional<LogEntry> entry = CorrectRows.standing(form.text("corrects"), view.entries());
    CorrectRows.Made made =
        entry
            .map(
                found ->
                    form.has("void")
                        ? rows(found, view).voided(form, visitor)
                        : rows(found, view).corrected(form, visitor))
            .orElse(new CorrectRows.Made(List.of(), List.of(visitor.say("correct.unknown"))));
    List<String> faults = made.faults();
    if (faults.isEmpty()) {
      try {
        Written written = desk.kitchen().logbook().log(made.rows(), form.once(context.path()));
        List<LogEntry> logged = written.entries();
        String done = "?done=" + logged.get(logged.size() - 1).id();
        context.redirect("/lots/" + view.state().lot() + done, HttpStatus.SEE_OTHER);
        return;
      } catch (Refused refused) {
        faults = EntryForm.faults(refused.problems(), desk, visitor);
      }
    }
    Filled again = Filled.refused(form.all(), faults);
    answer(context, HttpStatus.UNPROCESSABLE_CONTENT, visitor, view, entry, again);
  }

  private CorrectRows rows(LogEntry entry, LotView view) {
    return new CorrectRows(
        entry, view.state(), isFirst(entry, view), desk.zone(), desk.kitchen().now());
  }

  private static boolean isFirst(LogEntry entry, LotView view) {
    return view.entries().get(0).id().equals(entry.id());
  }

  private void answer(
      Context context,
      HttpStatus status,
      Visitor visitor,
      LotView view,
      Optional<LogEntry> entry,
      Filled form) {
    List<LotPageView.Entry> all =
        new Entries(desk, visitor, view)
            .each().stream().filter(LotPageView.Entry::canBeCorrected).toList();
    List<LotPageView.Entry> chosen =
        entry.stream()
            .flatMap(found -> all.stream().filter(line -> line.id().equals(found.id().text())))
            .toList();
    Known known = new Known(desk.kitchen());
    CorrectView page =
        new CorrectView(
            view.state().lot().text(),
            view.state().food(),
            all,
            chosen,
            entry.filter(found -> isFirst(found, view)).isPresent(),
            LotPage.isFrozen(view.state()),
            Arrays.stream(Word.values())
                .filter(word -> word != Word.CORRECTION)
                .map(Word::text)
                .toList(),
            Arrays.stream(How.values()).filter(How::isOfFood).map(How::text).toList(),
            known.places(),
            known.categories(visitor.language()),
            form);
    String here = "/lots/" + view.state().lot();
    Frame frame = desk.titled(visitor, visitor.say("correct.title"), here, List.of());
    desk.answer(context, status, Templates.PAGES.correct(frame, page));
  }
}
