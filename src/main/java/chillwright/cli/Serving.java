package chillwright.cli;

import chillwright.service.Kitchen;
import chillwright.web.Server;
import chillwright.web.Server.NotStarted;
import chillwright.web.Server.Options;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.List;
import java.util.Optional;

/** A kitchen that is being served, until the process is told to stop. */
final class Serving {
  private final Kitchen kitchen;
  private final Server server;
  private final String host;

  private Serving(Kitchen kitchen, Server server, String host) {
    this.kitchen = kitchen;
    this.server = server;
    this.host = host;
  }

  /**
   * Starts at the address asked for; away from this machine alone it makes the first access key.
   */
  static Serving start(Kitchen kitchen, ServerOptions wanted, Console console) {
    if (wanted.port() < 0 || wanted.port() > 65_535) {
      kitchen.close();
      throw new UsageFault(
          "--port " + wanted.port() + ": a port is a number from 0 to 65535.", List.of());
    }
    Options options = new Options(wanted.host(), wanted.port(), wanted.names(), false);
    Serving serving = start(kitchen, options);
    if (!isThisMachineAlone(wanted.host())) {
      Optional<String> key = kitchen.accessKeys().makeFirst();
      key.ifPresent(
          made ->
              console.result(
                  "Access key, shown this once: "
                      + made
                      + System.lineSeparator()
                      + "Send it with each request: Authorization: Bearer KEY"));
    }
    return serving;
  }

  private static boolean isThisMachineAlone(String host) {
    try {
      return InetAddress.getByName(host).isLoopbackAddress();
    } catch (UnknownHostException unknown) {
      throw new UsageFault("This machine knows no address of " + host + ".", List.of());
    }
  }

  /** Starts for this machine alone. */
  static Serving startHere(Kitchen kitchen, int port) {
    return start(kitchen, new Options(Server.LOOPBACK, port, List.of(), false));
  }

  private static Serving start(Kitchen kitchen, Options options) {
    try {
      return new Serving(kitchen, Server.start(kitchen, options), options.host());
    } catch (NotStarted refused) {
      kitchen.close();
      throw new UsageFault(refused.getMessage(), List.of());
    }
  }

  String address() {
    boolean isIpv6 = host.contains(":");
    return "http://" + (isIpv6 ? "[" + host + "]" : host) + ":" + server.port();
  }

  /** Ends running requests and closes the database. */
  void stop() {
    try {
      server.stop();
    } finally {
      kitchen.close();
    }
  }

  /** Sees to it that all is ended well when the process is told to stop. */
  void untilStopped() {
    Runtime.getRuntime().addShutdownHook(new Thread(this::stop, "stop"));
  }
}
