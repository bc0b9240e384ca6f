package chillwright.bench;

import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.RuleLibrary;
import chillwright.service.Inside;
import chillwright.service.Kitchen;
import chillwright.service.Opening;
import chillwright.storage.Database;
import chillwright.web.Server;
import java.nio.file.Path;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.Optional;

/** The service within this JVM, where its connections can be reached. */
final class InProcess implements AutoCloseable {
  private static final ZoneId ZONE = ZoneId.of("UTC");

  private final Kitchen kitchen;
  private final Server server;

  InProcess(Path database) throws BrokenRules {
    kitchen =
        Kitchen.open(
            new Opening(
                database,
                Optional.empty(),
                Optional.empty(),
                ZONE,
                RuleLibrary.load(Optional.empty()),
                InstantSource.system()));
    server = Server.start(kitchen, Server.Options.local());
  }

  int port() {
    return server.port();
  }

  Database database() {
    return Inside.databaseOf(kitchen);
  }

  @Override
  public void close() {
    server.stop();
    kitchen.close();
  }
}
