package chillwright.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.OptionalLong;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The service as a process of its own. */
final class Serve implements AutoCloseable {
  private static final Pattern ADDRESS = Pattern.compile("http://127\\.0\\.0\\.1:(\\d+)");
  private static final Pattern RESIDENT = Pattern.compile("VmRSS:\\s*(\\d+) kB");

  private final Process process;
  private final int port;

  private Serve(Process process, int port) {
    this.process = process;
    this.port = port;
  }

  static String[] words(Path database) {
    return new String[] {"serve", "--db", database.toString(), "--port", "0"};
  }

  static Serve start(Ground ground, Path database) throws IOException {
    return start(ground.program().command(words(database)));
  }

  /** Returns once it has told its address. */
  static Serve start(List<String> command) throws IOException {
    Process process =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
    BufferedReader out = process.inputReader(StandardCharsets.UTF_8);
    for (String line = out.readLine(); line != null; line = out.readLine()) {
      Matcher address = ADDRESS.matcher(line);
      if (address.find()) {
        return new Serve(process, Integer.parseInt(address.group(1)));
      }
    }
    throw new IOException("the service ended without telling where it serves");
  }

  int port() {
    return port;
  }

  HttpLine line() throws IOException {
    return new HttpLine(port);
  }

  /** Of the process and those it started, since a launcher may start the JVM as its child. */
  private Stream<ProcessHandle> all() {
    return Stream.concat(Stream.of(process.toHandle()), process.descendants());
  }

  long cpuNanos() {
    return all()
        .mapToLong(one -> one.info().totalCpuDuration().map(Duration::toNanos).orElse(0L))
        .sum();
  }

  /** Empty where the system has no file that tells. */
  OptionalLong residentBytes() throws IOException {
    long bytes = 0;
    for (ProcessHandle one : all().toList()) {
      Path status = Path.of("/proc", Long.toString(one.pid()), "status");
      if (!Files.isReadable(status)) {
        return OptionalLong.empty();
      }
      Matcher resident = RESIDENT.matcher(Files.readString(status));
      bytes += resident.find() ? Long.parseLong(resident.group(1)) * 1024 : 0;
    }
    return OptionalLong.of(bytes);
  }

  @Override
  public void close() {
    List<ProcessHandle> ending = all().toList();
    ending.forEach(ProcessHandle::destroy);
    try {
      if (!process.waitFor(30, TimeUnit.SECONDS)) {
        ending.forEach(ProcessHandle::destroyForcibly);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      ending.forEach(ProcessHandle::destroyForcibly);
    }
  }
}
