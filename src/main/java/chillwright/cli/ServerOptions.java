package chillwright.cli;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Option;

/** The options that say where a kitchen is served. */
final class ServerOptions {
  /** The port where none is named. */
  static final int DEFAULT_PORT = 8421;

  @Option(
      names = "--port",
      paramLabel = "N",
      description = "Port to serve on; 0 takes a free one (default: " + DEFAULT_PORT + ").")
  private int port = DEFAULT_PORT;

  @Option(
      names = "--host",
      paramLabel = "H",
      description = "Address to serve on (default: 127.0.0.1, this machine alone).")
  private String host = "127.0.0.1";

  @Option(
      names = "--name",
      paramLabel = "HOST",
      description = "A name this kitchen is reached by, such as kitchen.local; may be repeated.")
  private List<String> names = new ArrayList<>();

  int port() {
    return port;
  }

  String host() {
    return host;
  }

  List<String> names() {
    return List.copyOf(names);
  }
}
