package chillwright.web;

import chillwright.core.log.Problem;
import chillwright.web.answers.AnswerMaker;
import chillwright.web.answers.Answers;
import chillwright.web.answers.Answers.Fault;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** A request that cannot be answered as asked: the status, and every fault in words. */
final class RequestFault extends RuntimeException {
  static final int UNREADABLE = 400;
  static final int NOT_FOUND = 404;
  static final int WRONG = 422;

  private static final long serialVersionUID = 1L;

  private final int status;
  private final transient List<Fault> faults;
  private final transient Map<String, String> headers;

  RequestFault(int status, List<Fault> faults, Map<String, String> headers) {
    super(faults.stream().map(Fault::says).collect(Collectors.joining(" ")));
    this.status = status;
    this.faults = List.copyOf(faults);
    this.headers = Map.copyOf(headers);
  }

  RequestFault(int status, List<Fault> faults) {
    this(status, faults, Map.of());
  }

  RequestFault(int status, Fault fault) {
    this(status, List.of(fault));
  }

  /** For faults in a body that could be read. */
  static RequestFault wrong(List<Problem> problems) {
    return new RequestFault(WRONG, AnswerMaker.faults(problems));
  }

  /** For something that is not there, named by a parameter of the path. */
  static RequestFault unknown(String kind, String parameter, String given, String allowed) {
    return new RequestFault(
        NOT_FOUND,
        new Fault(
            "unknown-" + kind,
            new Answers.InParameter(parameter),
            given,
            allowed,
            "There is no %s %s here.".formatted(kind.replace('-', ' '), given)));
  }

  int status() {
    return status;
  }

  /** At least one. */
  List<Fault> faults() {
    return faults;
  }

  /** What the answer must say in its headers. */
  Map<String, String> headers() {
    return headers;
  }
}
