package chillwright.web;

import chillwright.service.AccessKeys;
import chillwright.service.Kitchen;
import chillwright.web.answers.Answers.ProblemDocument;
import chillwright.web.answers.Json;
import chillwright.web.pages.FaultPage;
import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.json.JavalinJackson;
import io.javalin.util.JavalinException;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeoutException;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.eclipse.jetty.http.UriCompliance;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.handler.GracefulHandler;

/** The service on a port of this machine. */
public final class Server {
  /** The address at which only this machine reaches it. */
  public static final String LOOPBACK = "127.0.0.1";

  /** How long running requests may take to end once it stops. */
  private static final long ENDING_MILLIS = 10_000;

  /** Held here, or their levels would be forgotten. What they say of a start, we say ourselves. */
  private static final List<Logger> QUIET =
      List.of(Logger.getLogger("io.javalin"), Logger.getLogger("org.eclipse.jetty"));

  private final Javalin javalin;

  /**
   * What it is started with.
   *
   * @param host name or address to listen at; 0.0.0.0 for every address of this machine
   * @param port 0 for any that is free
   * @param names further names by which clients call it, each with its port where that is another
   * @param keyNeeded whether every request needs an access key; always so away from loopback
   */
  public record Options(String host, int port, List<String> names, boolean keyNeeded) {
    public Options {
      names = List.copyOf(names);
      if (port < 0 || port > 65_535) {
        throw new IllegalArgumentException("a port is 0 to 65535: " + port);
      }
    }

    /** Open to this machine alone, at any free port. */
    public static Options local() {
      return new Options(LOOPBACK, 0, List.of(), false);
    }
  }

  /** It could not be started; the message says why in a plain word. */
  public static final class NotStarted extends RuntimeException {
    private static final long serialVersionUID = 1L;

    NotStarted(String says, Throwable cause) {
      super(says, cause);
    }
  }

  private Server(Javalin javalin) {
    this.javalin = javalin;
  }

  /**
   * Starts the service; it answers once this returns.
   *
   * @param kitchen stays open after the service has stopped
   * @throws NotStarted with a plain word why
   */
  public static Server start(Kitchen kitchen, Options options) {
    QUIET.forEach(logger -> logger.setLevel(Level.OFF));
    InetAddress address = addressOf(options.host());
    boolean isKeyNeeded = options.keyNeeded() || !address.isLoopbackAddress();
    Optional<AccessKeys> keys = isKeyNeeded ? Optional.of(kitchen.accessKeys()) : Optional.empty();
    List<String> names = new ArrayList<>(options.names());
    names.add(options.host());
    Guard guard = new Guard(new OwnNames(address, names), keys, kitchen.feedKey());
    Javalin javalin =
        Javalin.create(
            config -> {
              configure(config, new FaultPage(kitchen));
              config.jetty.host = address.getHostAddress();
              config.jetty.port = options.port();
              Routes.register(config.routes, kitchen, guard);
            });
    try {
      javalin.start();
    } catch (JavalinException e) {
      throw new NotStarted(
          "The service cannot listen at port %d of %s: %s. Is it in use? Give another with --port."
              .formatted(options.port(), options.host(), lastCause(e).getMessage()),
          e);
    }
    QUIET.forEach(logger -> logger.setLevel(Level.WARNING));
    return new Server(javalin);
  }

  private static InetAddress addressOf(String host) {
    try {
      return InetAddress.getByName(host);
    } catch (UnknownHostException e) {
      throw new NotStarted("This machine knows no address of " + host + ".", e);
    }
  }

  private static Throwable lastCause(Throwable thrown) {
    Throwable last = thrown;
    while (last.getCause() != null) {
      last = last.getCause();
    }
    return last;
  }

  private static void configure(JavalinConfig config, FaultPage page) {
    config.startup.showJavalinBanner = false;
    config.startup.showOldJavalinVersionWarning = false;
    config.startup.startupWatcherEnabled = false;
    config.http.prefer405over404 = true;
    config.http.defaultContentType = Accept.JSON;
    config.router.ignoreTrailingSlashes = false;
    config.router.javaLangErrorHandler(Server::answerError);
    config.jsonMapper(new JavalinJackson(Json.MAPPER, false));
    config.jetty.modifyHttpConfiguration(Server::configure);
    config.jetty.modifyServer(
        server -> {
          server.insertHandler(new GracefulHandler());
          server.insertHandler(new PlainHttp());
          server.setStopTimeout(ENDING_MILLIS);
          server.setErrorHandler(new ServerFaults(page));
        });
    config.jetty.modifyServletContextHandler(
        handler -> handler.setErrorHandler(new ServerFaults(page)));
  }

  private static void configure(HttpConfiguration http) {
    // An address has one reading only: what is ambiguous in it is refused, not guessed.
    http.setUriCompliance(UriCompliance.RFC3986);
    http.setSendServerVersion(false);
    http.setSendDateHeader(true);
  }

  /** The machine itself failed us, such as for want of memory. */
  private static void answerError(HttpServletResponse response, Error error) {
    ProblemDocument problem = Problems.bug(error);
    response.setStatus(problem.status());
    response.setContentType(Problems.TYPE);
    try {
      response.getOutputStream().write(Problems.bytes(problem));
    } catch (IOException e) {
      error.addSuppressed(e);
    }
  }

  /** The port it listens at. */
  public int port() {
    return javalin.port();
  }

  /**
   * Takes no more requests, lets the running ones end, and returns when they have. One that takes
   * too long, such as a large import, is cut off.
   */
  public void stop() {
    try {
      javalin.stop();
    } catch (JavalinException late) {
      if (!(late.getCause() instanceof TimeoutException)) {
        throw late;
      }
    }
  }

  /** Each method with each path it answers, as "GET /api/v1/lots". */
  List<String> routes() {
    return javalin.unsafe.internalRouter.allHttpHandlers().stream()
        .map(parsed -> parsed.endpoint)
        .filter(endpoint -> endpoint.method.isHttpMethod())
        .map(endpoint -> endpoint.method + " " + endpoint.path)
        .toList();
  }
}
