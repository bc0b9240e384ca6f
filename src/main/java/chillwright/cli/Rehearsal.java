package chillwright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.HttpURLConnection;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Does once, with a sample log in a scratch folder, what people do with the program. The build runs
 * it to learn which classes that takes, and keeps them in an archive beside the jar. It proves
 * nothing, and it ends well whatever happens: without the archive a start only takes longer.
 */
final class Rehearsal {
  private static final Pattern ADDRESS = Pattern.compile("http://\\S+");
  private static final int PATIENCE_MILLIS = 20_000;

  /** What is asked for most, and a fault. */
  private static final List<String> ASKED =
      List.of(
          "/",
          "/api/v1/health",
          "/api/v1/kitchen",
          "/api/v1/due?limit=50",
          "/api/v1/lots?limit=50",
          "/api/v1/lots?sort=use-first",
          "/api/v1/lots/BS-1102",
          "/api/v1/lots/BS-1102/entries",
          "/api/v1/reports/out-of-compliance",
          "/api/v1/reports/out-of-compliance?format=csv",
          "/api/v1/rule-sets",
          "/api/v1/lots/NO-SUCH-LOT");

  private final Path folder;
  private final StringWriter said = new StringWriter();

  private Rehearsal(Path folder) {
    this.folder = folder;
  }

  /** Runs it. */
  public static void main(String[] args) {
    Main.quieten();
    Path folder = ScratchFolder.make("chillwright-rehearsal");
    try {
      new Rehearsal(folder).run();
    } catch (IOException | RuntimeException broken) {
      System.err.println("The rehearsal ended early: " + broken);
    }
    // Stops the server too, which may still hold its files: the folder goes as far as it can.
    Runtime.getRuntime().addShutdownHook(new Thread(() -> ScratchFolder.delete(folder), "clear"));
    System.exit(0);
  }

  private void run() throws IOException {
    String log = sampleLog().toString();
    String db = folder.resolve("kitchen.db").toString();
    command("check", log, "--at", "2026-11-09T12:00:00-07:00", "--zone", "America/Denver");
    command("check", log, "--format", "json");
    command("check", folder.resolve("none.csv").toString());
    command("--help");
    command("keep", "soup_or_stew", "--made", "2026-11-22", "--frozen", "2026-11-23");
    command("rules", "us-food-code-2022");
    command("import", log, "--db", db, "--zone", "America/Denver");
    command("serve", "--db", db, "--port", "0");
    Matcher address = ADDRESS.matcher(said.toString());
    if (address.find()) {
      call(address.group());
    }
  }

  private Path sampleLog() throws IOException {
    Path log = folder.resolve("week.csv");
    try (InputStream sample = Rehearsal.class.getResourceAsStream("/sample-logs/week-1.csv")) {
      Files.copy(sample, log);
    }
    return log;
  }

  private void command(String... words) {
    PrintWriter out = new PrintWriter(said);
    Main.execute(Clock.systemUTC(), new Console(out, out, false), words);
  }

  private static void call(String address) throws IOException {
    for (String path : ASKED) {
      answer(connection(address + path));
    }
    post(address + "/api/v1/lots", "{\"lot\":\"R-1\",\"food\":\"Soup\",\"category\":\"soup\"}");
    post(
        address + "/api/v1/lots",
        "{\"lot\":\"R-1\",\"food\":\"Soup\",\"category\":\"soup_or_stew\"}");
    String entry = "{\"entry\":\"cooked\",\"when\":\"%s\",\"temperature\":\"180F\"}";
    post(address + "/api/v1/lots/R-1/entries", entry.formatted(Clock.systemUTC().instant()));
  }

  private static HttpURLConnection connection(String address) throws IOException {
    HttpURLConnection connection = (HttpURLConnection) URI.create(address).toURL().openConnection();
    connection.setConnectTimeout(PATIENCE_MILLIS);
    connection.setReadTimeout(PATIENCE_MILLIS);
    return connection;
  }

  private static void post(String address, String body) throws IOException {
    HttpURLConnection connection = connection(address);
    connection.setDoOutput(true);
    connection.setRequestProperty("Content-Type", "application/json");
    connection.setRequestProperty("Idempotency-Key", "rehearsal-" + body.hashCode());
    try (OutputStream out = connection.getOutputStream()) {
      out.write(body.getBytes(StandardCharsets.UTF_8));
    }
    answer(connection);
  }

  private static void answer(HttpURLConnection connection) throws IOException {
    boolean isFault = connection.getResponseCode() >= HttpURLConnection.HTTP_BAD_REQUEST;
    try (InputStream body = isFault ? connection.getErrorStream() : connection.getInputStream()) {
      body.transferTo(OutputStream.nullOutputStream());
    }
  }
}
