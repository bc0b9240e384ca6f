package chillwright.web.pages;

import chillwright.core.kitchen.Person;
import chillwright.print.Times;
import chillwright.rulebook.RuleBook;
import chillwright.service.Kitchen;
import chillwright.service.KnownState;
import chillwright.service.LabelAddress;
import chillwright.service.Settings;
import gg.jte.models.runtime.JteModel;
import gg.jte.output.Utf8ByteOutput;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.net.URI;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** What every page needs: the kitchen, who asks, and the frame around the answer. */
final class Desk {
  static final String POLICY =
      "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self'; connect-src 'self';"
          + " worker-src 'self';"
          + " form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

  private final Kitchen kitchen;
  private final boolean needsKey;
  private final LastViews last;

  /**
   * @param needsKey whether whoever opens a page must have given the access key
   */
  Desk(Kitchen kitchen, boolean needsKey) {
    this.kitchen = kitchen;
    this.needsKey = needsKey;
    this.last = new LastViews(new KnownState(kitchen));
  }

  boolean needsKey() {
    return needsKey;
  }

  /**
   * Where this service is found: as the kitchen says, or else under the name by which the browser
   * called it. The guard has let no other name pass.
   */
  String address(Context context) {
    return kitchen.settings().address().orElse(context.scheme() + "://" + context.host());
  }

  /** Whether that address leads every other machine to itself. */
  boolean isAddressLoopback(Context context) {
    Optional<String> host = Optional.ofNullable(URI.create(address(context)).getHost());
    return host.filter(LabelAddress::isLoopback).isPresent();
  }

  Kitchen kitchen() {
    return kitchen;
  }

  Visitor visitor(Context context) {
    return Visitor.of(context, kitchen.settings().scale());
  }

  /** A view that depends on nothing of its visitor but language and scale. */
  <V> V view(String question, Visitor visitor, Class<V> kind, Supplier<V> making) {
    return last.view(question + " " + visitor.language() + " " + visitor.scale(), kind, making);
  }

  Frame frame(Visitor visitor, String titleKey, String here, List<Frame.Notice> notices) {
    return titled(visitor, visitor.say(titleKey), here, notices);
  }

  /** A frame whose title is no text of ours, such as the name of a food. */
  Frame titled(Visitor visitor, String title, String here, List<Frame.Notice> notices) {
    Settings settings = kitchen.settings();
    Instant now = kitchen.now();
    return new Frame(
        visitor,
        title,
        settings.name().orElse(visitor.say("kitchen.unnamed")),
        here,
        "",
        moment(now, visitor),
        now.toString(),
        judgedBy(visitor, settings.ruleBook()),
        notices);
  }

  /** The rules that judged, and that others decide. */
  static String judgedBy(Visitor visitor, RuleBook book) {
    return visitor.say(
        "frame.judged-by",
        visitor.language().named(book.title()),
        book.version(),
        visitor.language().saidByRules(book.defers().strip()));
  }

  /** Initials to choose from. */
  List<String> people() {
    return kitchen.setUp().people().stream().map(Person::initials).toList();
  }

  /** Day and time of day as the person reads them. */
  String moment(Instant moment, Visitor visitor) {
    return times(visitor).moment(moment);
  }

  /** Days and moments as that person reads them now. */
  Times times(Visitor visitor) {
    return Times.at(kitchen.now(), zone(), visitor.language());
  }

  /** The time of day, with the day where it is not today. */
  String clock(Instant moment, Visitor visitor) {
    return times(visitor).clock(moment);
  }

  ZoneId zone() {
    return kitchen.zone();
  }

  void answer(Context context, JteModel page) {
    answer(context, HttpStatus.OK, page);
  }

  void answer(Context context, HttpStatus status, JteModel page) {
    context.header("Content-Security-Policy", POLICY);
    context.status(status).contentType("text/html; charset=utf-8").result(drawn(page));
  }

  /** Drawn as bytes: what never changes of a page is kept as bytes, too. */
  static byte[] drawn(JteModel page) {
    Utf8ByteOutput drawn = new Utf8ByteOutput();
    page.render(drawn);
    return drawn.toByteArray();
  }

  /**
   * Whether a form came from a page of ours; one that did not is answered here.
   *
   * @return empty if the form is not to be taken
   */
  Optional<Form> form(Context context) {
    Visitor visitor = visitor(context);
    Form form = new Form(context.formParamMap());
    if (form.text("token").equals(visitor.token())) {
      Visitor.remember(context, form);
      return Optional.of(form);
    }
    fault(context, visitor, HttpStatus.FORBIDDEN, "fault.form-old");
    return Optional.empty();
  }

  void fault(Context context, Visitor visitor, HttpStatus status, String key, Object... filled) {
    faults(context, visitor, status, visitor.say(key, filled), List.of());
  }

  /** Answers that what was asked for cannot be had, with every reason. */
  void faults(Context context, Visitor visitor, HttpStatus status, String says, List<String> why) {
    faults(
        context, visitor, status, says, why, List.of(new Choice("/", visitor.say("fault.back"))));
  }

  /**
   * The same with ways to where it can be asked better, or mended.
   *
   * @param ways addresses, and what they lead to
   */
  void faults(
      Context context,
      Visitor visitor,
      HttpStatus status,
      String says,
      List<String> why,
      List<Choice> ways) {
    Frame frame = frame(visitor, "fault.title", "", List.of());
    String language = visitor.language().locale().toLanguageTag();
    answer(context, status, Templates.PAGES.fault(frame, says, why, language, false, ways));
  }
}
