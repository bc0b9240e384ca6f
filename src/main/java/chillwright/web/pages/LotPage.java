package chillwright.web.pages;

import chillwright.core.forecast.Forecast;
import chillwright.core.keeping.LotState;
import chillwright.core.learning.CoolingRuns;
import chillwright.core.log.How;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Phase;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Acts;
import chillwright.core.rules.Finding;
import chillwright.core.rules.OpenCooling;
import chillwright.core.rules.Verdict;
import chillwright.print.AheadText;
import chillwright.print.CoolingMethodText;
import chillwright.print.CurveChart;
import chillwright.print.Figures;
import chillwright.print.ForecastText;
import chillwright.print.Sentences;
import chillwright.print.SpeedupText;
import chillwright.print.Times;
import chillwright.service.LotView;
import chillwright.service.Lots;
import chillwright.service.Refused;
import chillwright.service.Tracing.Trace;
import chillwright.service.Tracing.Traced;
import chillwright.web.pages.LotPageView.Found;
import chillwright.web.pages.LotPageView.Next;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** One lot: where it stands, what to do, what the record shows, and the form to log the next. */
final class LotPage {
  static final String ADDRESS = "/lots/{lot}";
  static final String ENTRIES = "/lots/{lot}/entries";

  /** So many lots made of one are followed on its page. */
  private static final int FOLLOWED = 500;

  /** How long an address on a label is does not change what fits beside its code. */
  private static final String LABEL_ADDRESS = "http://kitchen";

  private static final Filled NOTHING = Filled.with(Map.of());

  private final Desk desk;

  LotPage(Desk desk) {
    this.desk = desk;
  }

  void show(Context context) {
    Visitor visitor = desk.visitor(context);
    Optional<LotView> view = view(context, visitor);
    if (view.isPresent()) {
      String done = Optional.ofNullable(context.queryParam("done")).orElse("");
      List<Frame.Notice> notices =
          Stream.of(
                  DividedNotice.of(context, view.get(), visitor).stream(),
                  new OtherParts(desk.kitchen(), view.get()).saved(context, visitor).stream(),
                  view.get().entries().stream()
                      .filter(entry -> entry.id().text().equals(done))
                      .map(entry -> done(desk, entry, view.get(), visitor)),
                  new CountedMore(desk, view.get(), visitor).notices(context).stream())
              .flatMap(told -> told)
              .toList();
      LotPageView page =
          page(
              view.get(),
              visitor,
              KeptEntry.of(context)
                  .map(kept -> kept(view.get(), visitor, kept))
                  .orElseGet(() -> opened(view.get(), visitor, context.queryParam("entry"))),
              CountedMore.asked(context),
              LabelsForm.of(context),
              desk.isAddressLoopback(context));
      answer(context, HttpStatus.OK, visitor, view.get(), page, notices);
    }
  }

  static Frame.Notice done(Desk desk, LogEntry entry, LotView view, Visitor visitor) {
    Entries entries = new Entries(desk, visitor, view);
    String word = visitor.say(entries.titled(entry));
    String text = entries.text(entry);
    return new Frame.Notice(
        visitor.say("entry.done", text.isEmpty() ? word : word + ", " + text),
        List.of(),
        Optional.of("/lots/" + view.state().lot() + "/correct?entry=" + entry.id()));
  }

  private Optional<LotView> view(Context context, Visitor visitor) {
    return view(desk, context, visitor);
  }

  /** The lot that the address names; where there is none, that is answered here. */
  static Optional<LotView> view(Desk desk, Context context, Visitor visitor) {
    String code = context.pathParam("lot");
    Optional<LotView> view = desk.kitchen().lots().meant(code).flatMap(desk.kitchen().lots()::lot);
    if (view.isEmpty()) {
      desk.fault(context, visitor, HttpStatus.NOT_FOUND, "fault.no-lot", code);
    }
    return view;
  }

  /** The form as it is opened: the likeliest word is chosen. */
  private Filled blank(LotView view, Visitor visitor) {
    Map<String, String> fields = new HashMap<>();
    fields.put("entry", NextWords.of(logged(view), desk.kitchen().now()).get(0));
    fields.put("scale", visitor.scaleLetter());
    fields.putAll(ColdPlace.usual(desk, view.state().food()));
    return Filled.with(fields);
  }

  /** The same, with the word that a link asks for. */
  private Filled opened(LotView view, Visitor visitor, String asked) {
    Map<String, String> fields = new HashMap<>(blank(view, visitor).fields());
    Optional.ofNullable(asked)
        .filter(NextWords.of(logged(view), desk.kitchen().now())::contains)
        .ifPresent(word -> fields.put("entry", word));
    return Filled.with(fields);
  }

  /** The form with what a phone had kept, and what is wrong with it or asked about it. */
  private Filled kept(LotView view, Visitor visitor, Form kept) {
    return new SentEntry(desk, visitor, view, kept)
        .kept(blank(view, visitor).fields(), desk.kitchen().now());
  }

  /** The lot that takes the next entry: the first of its parts where nothing else is left. */
  private LotView logged(LotView view) {
    OtherParts parts = new OtherParts(desk.kitchen(), view);
    return parts.areAlone()
        ? desk.kitchen().lots().lot(parts.onHand().get(0).lot()).orElse(view)
        : view;
  }

  /** Then a phone must offer a sign for what reads below zero. */
  static boolean isFrozen(LotState lot) {
    return lot.standing().filter(standing -> standing.phase() == Phase.FROZEN).isPresent();
  }

  /** Takes an entry, and shows the lot with what came of it, or the form with what is wrong. */
  void log(Context context) {
    Optional<Form> form = desk.form(context);
    if (form.isEmpty()) {
      return;
    }
    Visitor visitor = desk.visitor(context);
    Optional<LotView> view = view(context, visitor);
    if (view.isEmpty()) {
      return;
    }
    SentEntry sent = new SentEntry(desk, visitor, view.get(), form.get());
    List<String> faults = sent.faults();
    List<Question> asked = faults.isEmpty() ? sent.asked() : List.of();
    if (faults.isEmpty() && !Question.isOpen(asked, form.get().answered())) {
      try {
        String page = "/lots/" + view.get().state().lot();
        context.redirect(sent.store(context.path(), page), HttpStatus.SEE_OTHER);
        return;
      } catch (Refused refused) {
        faults = sent.faults(refused);
      }
    }
    Filled again = sent.again(faults, asked);
    LotPageView page =
        page(view.get(), visitor, again, NOTHING, NOTHING, desk.isAddressLoopback(context));
    answer(context, HttpStatus.UNPROCESSABLE_CONTENT, visitor, view.get(), page, List.of());
  }

  private void answer(
      Context context,
      HttpStatus status,
      Visitor visitor,
      LotView view,
      LotPageView page,
      List<Frame.Notice> notices) {
    LotState state = view.state();
    String here = "/lots/" + state.lot().text();
    Frame frame = desk.titled(visitor, state.food(), here, notices);
    desk.answer(context, status, Templates.PAGES.lot(frame, page));
  }

  /** Shows a form to divide or combine again, with every fault. */
  void refuse(Context context, Visitor visitor, LotView view, Filled share) {
    LotPageView again =
        page(view, visitor, blank(view, visitor), share, NOTHING, desk.isAddressLoopback(context));
    answer(context, HttpStatus.UNPROCESSABLE_CONTENT, visitor, view, again, List.of());
  }

  private LotPageView page(
      LotView view,
      Visitor visitor,
      Filled form,
      Filled share,
      Filled labels,
      boolean leadsNowhere) {
    Instant now = desk.kitchen().now();
    Lots lots = desk.kitchen().lots();
    LotState state = view.state();
    Entries entries = new Entries(desk, visitor, view);
    List<Traced> traced =
        desk.kitchen().tracing().lot(state.lot(), FOLLOWED).map(Trace::lots).orElse(List.of());
    Optional<Verdict> verdict = state.standing().flatMap(s -> s.verdicts().at(now));
    Scale scale = visitor.scale();
    Sentences sentences = new Sentences(desk.zone(), scale, now, visitor.language());
    OtherParts others = new OtherParts(desk.kitchen(), view);
    List<LotView> parts = LabelsPdf.parts(desk.kitchen(), view);
    boolean isWholeOfParts = others.areAlone() && !parts.isEmpty();
    boolean isOver = new LotDates(desk, visitor, now).isOver(view);
    boolean isDateless =
        others.areAlone() || !state.isOnHand() || NotForUse.dates(view, now, visitor).isPresent();
    return new LotPageView(
        state.lot().text(),
        Sign.of(verdict),
        LotLines.where(state, OutWords.ending(traced), visitor),
        next(view, sentences, visitor),
        LotActs.isOwed(state, now),
        isFrozen(logged(view).state()),
        form,
        others.shown(form, visitor, part -> next(part, sentences, visitor)),
        NextWords.of(logged(view), now),
        Arrays.stream(How.values()).filter(How::isOfFood).map(How::text).toList(),
        new Known(desk.kitchen()).places(),
        new Known(desk.kitchen()).containers(visitor.language()),
        desk.people(),
        curve(view, scale, visitor),
        forecasts(view, sentences, scale),
        methods(view),
        findings(view, sentences, visitor),
        isWholeOfParts ? List.of() : dates(view, traced, visitor),
        isDateless || isOver ? List.of() : frozenLife(view, visitor),
        isDateless || isOver ? List.of() : because(state, visitor),
        view.sources().stream().map(LotId::text).toList(),
        lots.withoutPutBack(view.descendants()).stream().map(LotId::text).toList(),
        new OutWords(desk, visitor).given(traced),
        new ContentsText(state.food(), view.contents(), visitor).shown(),
        new LotActs(desk.kitchen()).shown(state, stillCools(view), share, visitor),
        entries.shown(),
        view.placeReadings().stream().map(entries::text).toList(),
        new ProbeWords(visitor, at -> desk.moment(at, visitor)).vouched(desk, view.entries()),
        leadsNowhere,
        new LabelWords(desk, visitor, LABEL_ADDRESS).fit(view, parts, labels),
        parts.size(),
        PlansPage.told(desk, state.lot()));
  }

  private List<String> dates(LotView view, List<Traced> traced, Visitor visitor) {
    if (!view.state().isOnHand()) {
      return List.of(LotDates.gone(OutWords.ending(traced), visitor));
    }
    List<String> says = new ArrayList<>(new CallingPlaces(desk, visitor).warning(view.state()));
    says.addAll(new LotDates(desk, visitor, desk.kitchen().now()).says(view));
    return says;
  }

  private List<String> because(LotState state, Visitor visitor) {
    return LotDates.kept(state).stream()
        .flatMap(dates -> dates.because().stream())
        .map(visitor.language()::because)
        .map(desk.times(visitor)::retold)
        .toList();
  }

  /** Drawn for a screen and for a phone; the style shows the one that fits. */
  private String curve(LotView view, Scale scale, Visitor visitor) {
    return curve(view, scale, visitor, CurveChart.WIDTH)
        + curve(view, scale, visitor, CurveChart.NARROW);
  }

  private String curve(LotView view, Scale scale, Visitor visitor, double width) {
    return view.judged()
        .flatMap(
            judged ->
                CurveChart.of(
                    judged.timeline().entries(),
                    judged.findings(),
                    Times.kept(desk.zone(), visitor.language()),
                    scale,
                    width))
        .map(chart -> Svg.of(chart, visitor.say("lot.curve.title", view.state().food())))
        .orElse("");
  }

  /** Why it is not for use, then what falls due next. */
  private static List<Next> next(LotView view, Sentences sentences, Visitor visitor) {
    Stream<Finding> due = view.judged().flatMap(LotView.Judged::due).stream();
    Stream<Next> asked =
        Stream.concat(NotForUse.reasons(view, sentences.now()).stream(), due)
            .distinct()
            .map(finding -> next(finding, view, sentences, visitor));
    Stream<Next> told =
        NotForUse.mended(view, sentences, visitor)
            .or(() -> NotForUse.unread(view, sentences, visitor))
            .or(() -> NotForUse.coldNow(view, sentences.now(), visitor))
            .map(says -> new Next(says, "", ""))
            .stream();
    return Stream.concat(told, asked).toList();
  }

  private static Next next(Finding due, LotView view, Sentences sentences, Visitor visitor) {
    boolean isPending = due.at(sentences.now()) == Verdict.PENDING;
    Instant until = due.deadline().orElse(due.settlesAt());
    return isPending
        ? new Next(
            uncounted(due, view, sentences, until),
            until.toString(),
            NowPage.left(until, sentences.now(), visitor))
        : new Next(NotForUse.says(due, view, sentences), "", "");
  }

  private static String uncounted(Finding due, LotView view, Sentences sentences, Instant until) {
    return view.judged()
        .map(of -> sentences.saysUncounted(due, of.timeline(), of.ruleSet(), until))
        .orElseGet(() -> sentences.saysUncounted(due, until));
  }

  private LotPageView.Ahead forecasts(LotView view, Sentences sentences, Scale scale) {
    ForecastText text =
        new ForecastText(sentences.zone(), scale, sentences.now(), sentences.language());
    List<Forecast> forecasts = ahead(view, sentences.now());
    boolean isMissed =
        NotForUse.reasons(view, sentences.now()).stream()
            .anyMatch(reason -> CoolingRuns.isCooling(reason.rule()));
    List<Forecast> helped = isMissed ? List.of() : forecasts;
    return new LotPageView.Ahead(
        forecasts.stream().map(text::reaches).distinct().toList(),
        helped.stream().map(text::aims).flatMap(Optional::stream).distinct().toList(),
        forecasts.isEmpty() ? "" : text.basis(forecasts),
        forecasts.isEmpty() ? "" : earlier(view, new CoolingMethodText(scale, text.language())),
        new SpeedupText(sentences.zone(), scale, sentences.now(), sentences.language())
            .lines(helped));
  }

  private String earlier(LotView view, CoolingMethodText text) {
    return desk.kitchen().coolingMethods().like(view).map(text::says).orElse("");
  }

  /** Of limits still ahead, at times still ahead: of what has passed the finding tells. */
  private static List<Forecast> ahead(LotView view, Instant now) {
    return view.judged().stream()
        .filter(is -> is.timeline().phase() != Phase.REHEATING)
        .flatMap(is -> is.forecasts().stream())
        .filter(found -> found.awaited().deadline().filter(now::isAfter).isEmpty())
        .filter(found -> found.expected().filter(now::isAfter).isEmpty())
        .toList();
  }

  private static boolean stillCools(LotView view) {
    return view.judged()
        .flatMap(judged -> OpenCooling.of(judged.timeline(), judged.ruleSet()))
        .isPresent();
  }

  private static String methods(LotView view) {
    boolean cools =
        view.judged().map(LotView.Judged::findings).orElse(List.of()).stream()
            .anyMatch(finding -> CoolingRuns.isCooling(finding.rule()));
    return cools ? CoolingMethodsPage.of(view.state().food()) : "";
  }

  private static List<Found> findings(LotView view, Sentences sentences, Visitor visitor) {
    return view.judged().stream()
        .flatMap(
            is ->
                Acts.telling(is.timeline(), is.findings(), is.ruleSet(), sentences.now()).stream())
        .sorted(Sentences.worstFirst(sentences.now()))
        .map(finding -> found(finding, view, sentences, visitor))
        .toList();
  }

  private static Found found(Finding finding, LotView view, Sentences sentences, Visitor visitor) {
    Next counted = next(finding, view, sentences, visitor);
    return new Found(
        Sign.of(finding.at(sentences.now())),
        counted,
        Figures.limitInBoth(finding.rule(), sentences.language()),
        finding.rule().citation().text());
  }

  private static List<String> frozenLife(LotView view, Visitor visitor) {
    AheadText text = new AheadText(visitor.language(), visitor.scale());
    return view.frozenLife().stream().map(text::says).toList();
  }
}
