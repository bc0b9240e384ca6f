package chillwright.web.pages;

import chillwright.core.measure.Temperature.Scale;
import chillwright.print.Language;
import chillwright.service.Kitchen;
import gg.jte.models.runtime.JteModel;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A fault told to somebody who opened an address in a browser: what happened and what to do. Its
 * status is that of the answer a program gets.
 */
public final class FaultPage {
  /** Faults that have words of their own on the pages: the word "fault", and their code. */
  private static final Set<String> TOLD =
      Set.of(
          "fault.unknown-address",
          "fault.wrong-method",
          "fault.foreign-host",
          "fault.foreign-origin",
          "fault.missing-key",
          "fault.unknown-key",
          "fault.plans-busy",
          "fault.internal-fault");

  /** What the page may load: its own style and script. */
  public static final String POLICY = Desk.POLICY;

  private final Desk desk;

  public FaultPage(Kitchen kitchen) {
    this.desk = new Desk(kitchen, false);
  }

  /**
   * What went wrong.
   *
   * @param code of its first fault
   * @param number under which the log of the service has more; empty for none
   * @param says every fault in English words, for those that the pages have no words for
   */
  public record Trouble(int status, String code, Optional<String> number, List<String> says) {
    public Trouble {
      says = List.copyOf(says);
    }

    /** Nothing of the kitchen is told where its database may fail, or a stranger may listen. */
    private boolean isBare() {
      return status >= HttpStatus.INTERNAL_SERVER_ERROR.getCode() || code.startsWith("foreign-");
    }
  }

  /** The page where no request could be read: nothing of the kitchen or of a visitor is on it. */
  public byte[] bare(Language language, Trouble trouble) {
    Visitor nobody = new Visitor(language, Scale.FAHRENHEIT, "", "");
    Frame frame = Frame.bare(nobody, nobody.say("fault.title"), desk.kitchen().now());
    return Desk.drawn(rendered(frame, trouble));
  }

  /** Answers with the page. */
  public void answer(Context context, Trouble trouble) {
    Visitor visitor =
        trouble.isBare() ? Visitor.of(context, Scale.FAHRENHEIT) : desk.visitor(context);
    Frame frame =
        trouble.isBare()
            ? Frame.bare(visitor, visitor.say("fault.title"), desk.kitchen().now())
            : desk.frame(visitor, "fault.title", "", List.of());
    desk.answer(context, HttpStatus.forStatus(trouble.status()), rendered(frame, trouble));
  }

  private static JteModel rendered(Frame frame, Trouble trouble) {
    String key = "fault." + trouble.code();
    boolean isTold = TOLD.contains(key);
    String says = frame.visitor().say(isTold ? key : "fault.other", trouble.number().orElse(""));
    return Templates.PAGES.fault(
        frame,
        says,
        isTold
            ? List.of()
            : trouble.says().stream().map(frame.visitor().language()::fault).toList(),
        frame.visitor().language().tag(),
        trouble.status() == HttpStatus.UNAUTHORIZED.getCode(),
        List.of(new Choice("/", frame.visitor().say("fault.back"))));
  }
}
