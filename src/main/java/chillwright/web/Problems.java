package chillwright.web;

import chillwright.core.log.Problem;
import chillwright.core.log.Problem.Where.InField;
import chillwright.service.Busy;
import chillwright.service.Refused;
import chillwright.web.answers.AnswerMaker;
import chillwright.web.answers.Answers;
import chillwright.web.answers.Answers.Fault;
import chillwright.web.answers.Answers.ProblemDocument;
import chillwright.web.answers.Json;
import chillwright.web.pages.FaultPage;
import com.fasterxml.jackson.core.JsonProcessingException;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Header;
import io.javalin.http.HttpResponseException;
import io.javalin.http.MethodNotAllowedResponse;
import io.javalin.router.EndpointNotFound;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ThreadLocalRandom;
import org.eclipse.jetty.ee10.servlet.ServletContextRequest;
import org.eclipse.jetty.http.HttpException;
import org.eclipse.jetty.http.HttpStatus;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Every error as a problem document (RFC 9457), or as a page for who opened one in a browser: one
 * table from what went wrong to HTTP.
 */
final class Problems {
  static final String TYPE = "application/problem+json";

  /** The most faults of one answer: more than a person mends, and no larger than the request. */
  private static final int MOST = 1000;

  private static final Logger LOG = LoggerFactory.getLogger(Problems.class);

  private final FaultPage page;

  Problems(FaultPage page) {
    this.page = page;
  }

  void register(RoutesConfig routes) {
    routes.exception(RequestFault.class, (fault, context) -> answer(context, fault));
    routes.exception(Busy.class, (busy, context) -> answer(context, busy()));
    routes.exception(Refused.class, (refused, context) -> answer(context, of(refused, context)));
    routes.exception(
        MethodNotAllowedResponse.class,
        (wrong, context) -> answer(context, wrongMethod(wrong, context)));
    routes.exception(
        EndpointNotFound.class, (unknown, context) -> answer(context, unknownAddress(context)));
    routes.exception(
        HttpResponseException.class,
        (other, context) -> write(context, plain(other.getStatus()), Map.of()));
    routes.exception(
        Exception.class,
        (thrown, context) ->
            write(
                context,
                thrown instanceof HttpException known ? plain(known.getCode()) : bug(thrown),
                Map.of()));
  }

  /** Nothing is at fault; it is only not the turn of this plan. */
  private static RequestFault busy() {
    return new RequestFault(
        HttpStatus.SERVICE_UNAVAILABLE_503,
        List.of(
            new Fault(
                "plans-busy",
                new Answers.InRequest("service"),
                "",
                "",
                "As many plans are being worked out as may be at once. Nothing was stored. Ask"
                    + " again in a few seconds.")),
        Map.of(Header.RETRY_AFTER, Integer.toString(Busy.RETRY_SECONDS)));
  }

  private void answer(Context context, RequestFault fault) {
    write(context, document(fault), fault.headers());
  }

  private void write(Context context, ProblemDocument problem, Map<String, String> headers) {
    if (context.res().isCommitted()) {
      // Half an answer must not look like a whole one: the client sees the line go dead.
      ServletContextRequest.getServletContextRequest(context.req())
          .getServletChannel()
          .abort(new IOException("cut off after a fault"));
      return;
    }
    headers.forEach(context::header);
    context.removeHeader(Header.ETAG);
    context.header(Header.CACHE_CONTROL, "no-store");
    if (!context.path().startsWith("/api/") && Accept.wantsPage(context)) {
      page.answer(context, trouble(problem));
    } else {
      context.status(problem.status()).contentType(TYPE).result(bytes(problem));
    }
  }

  static FaultPage.Trouble trouble(ProblemDocument problem) {
    List<Fault> faults = problem.problems();
    return new FaultPage.Trouble(
        problem.status(),
        faults.get(0).code(),
        problem.number(),
        faults.stream().map(Fault::says).toList());
  }

  static byte[] bytes(ProblemDocument problem) {
    try {
      return Json.MAPPER.writeValueAsBytes(problem);
    } catch (JsonProcessingException broken) {
      throw new IllegalStateException("a problem could not be written as JSON", broken);
    }
  }

  static ProblemDocument document(RequestFault fault) {
    List<Fault> all = fault.faults();
    String listed = all.size() > MOST ? "the first " + MOST : "each";
    String detail =
        all.size() == 1
            ? all.get(0).says()
            : "There are " + all.size() + " faults; \"problems\" lists " + listed + ".";
    return document(fault.status(), detail, Optional.empty(), bounded(all));
  }

  /** So many faults as one answer may list, and how many there are besides. */
  static List<Fault> bounded(List<Fault> faults) {
    if (faults.size() <= MOST) {
      return faults;
    }
    List<Fault> first = new ArrayList<>(faults.subList(0, MOST));
    String count = Integer.toString(faults.size() - MOST);
    first.add(
        new Fault(
            "more-faults",
            new Answers.InRequest("body"),
            count,
            "none",
            "There are " + count + " more faults. Mend these first."));
    return first;
  }

  private static ProblemDocument document(
      int status, String detail, Optional<String> number, List<Fault> faults) {
    return new ProblemDocument("about:blank", title(status), status, detail, number, faults);
  }

  /** The phrase of RFC 9110 for a status, where the server under us has an older one. */
  private static String title(int status) {
    return switch (status) {
      case 413 -> "Content Too Large";
      case 422 -> "Unprocessable Content";
      case 500 -> "Internal Server Error";
      default -> HttpStatus.getMessage(status);
    };
  }

  /** For what the server refuses before or beside our own code. */
  static ProblemDocument plain(int status) {
    boolean isOurs = status >= HttpStatus.INTERNAL_SERVER_ERROR_500;
    String says =
        switch (status) {
          case HttpStatus.BAD_REQUEST_400 ->
              "The request is not readable HTTP, or its address is not. Percent-encode what is not"
                  + " a letter, digit, '.', '_' or '-'.";
          case HttpStatus.URI_TOO_LONG_414 -> "The address is too long.";
          case HttpStatus.REQUEST_HEADER_FIELDS_TOO_LARGE_431 ->
              "The address and headers are too large together.";
          case HttpStatus.REQUEST_TIMEOUT_408 ->
              "The request did not arrive in time. Send it again.";
          case HttpStatus.SERVICE_UNAVAILABLE_503 ->
              "The service is stopping. Send it again with the same key once it runs.";
          default ->
              isOurs
                  ? "The service cannot answer this request."
                  : "The request is not answered: " + title(status) + ".";
        };
    Object where = new Answers.InRequest(isOurs ? "service" : part(status));
    Fault fault = new Fault(code(status), where, "", "", says);
    return document(status, says, Optional.empty(), List.of(fault));
  }

  private static String part(int status) {
    return status == HttpStatus.URI_TOO_LONG_414 ? "address" : "head";
  }

  private static String code(int status) {
    return title(status).toLowerCase(Locale.ROOT).replace(' ', '-');
  }

  /** A bug or a broken disk: told by a number only, under which the log has the rest. */
  static ProblemDocument bug(Throwable bug) {
    String number = "%08x".formatted(ThreadLocalRandom.current().nextInt());
    LOG.error("Fault {}", number, bug);
    String says =
        "Something went wrong here. The service's own log has it under number " + number + ".";
    return document(
        HttpStatus.INTERNAL_SERVER_ERROR_500,
        says,
        Optional.of(number),
        List.of(new Fault("internal-fault", new Answers.InRequest("service"), "", "", says)));
  }

  private static RequestFault of(Refused refused, Context context) {
    int status =
        switch (refused.why()) {
          case FAULTS, KEY_REUSED -> RequestFault.WRONG;
          case LOT_EXISTS, DAY_STANDS -> HttpStatus.CONFLICT_409;
        };
    List<Fault> faults =
        refused.problems().stream().map(problem -> fault(problem, context)).toList();
    return new RequestFault(status, faults);
  }

  /** A request without a body has its fields in its address; a key is a header of it. */
  private static Fault fault(Problem problem, Context context) {
    Fault fault = AnswerMaker.faults(List.of(problem)).get(0);
    if (!(problem.where() instanceof InField in)) {
      return fault;
    }
    String name = in.pointer().replaceFirst("/", "");
    if (name.equals(OnceKeys.HEADER)) {
      return at(new Answers.InHeader(name), fault);
    }
    return context.method().name().equals("POST")
        ? fault
        : at(new Answers.InParameter(name), fault);
  }

  private static Fault at(Object where, Fault fault) {
    return new Fault(fault.code(), where, fault.given(), fault.allowed(), fault.says());
  }

  private static RequestFault wrongMethod(MethodNotAllowedResponse wrong, Context context) {
    String allowed = wrong.getDetails().values().stream().findFirst().orElse("GET, HEAD");
    String given = context.method().name();
    return new RequestFault(
        HttpStatus.METHOD_NOT_ALLOWED_405,
        List.of(
            new Fault(
                "wrong-method",
                new Answers.InRequest("method"),
                given,
                allowed,
                "This address does not take " + given + ", only " + allowed + ".")),
        Map.of(Header.ALLOW, allowed));
  }

  private static RequestFault unknownAddress(Context context) {
    String path = Shown.text(context.path());
    return new RequestFault(
        RequestFault.NOT_FOUND,
        new Fault(
            "unknown-address",
            new Answers.InRequest("address"),
            path,
            "the paths of /api/v1/openapi.json",
            "There is nothing at " + path + "."));
  }
}
