package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Stopping lets running requests end. */
class StopTest {
  @Test
  void a_request_that_is_on_its_way_is_answered(@TempDir Path folder) throws Exception {
    Served served = Served.in(folder);
    int port = served.server().port();
    byte[] body =
        "{\"food\":\"Barley soup\",\"category\":\"soup_or_stew\"}".getBytes(StandardCharsets.UTF_8);
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
      socket.setSoTimeout(20_000);
      String head =
          served.head(
              "POST",
              "/api/v1/lots",
              "Content-Type: application/json",
              "Content-Length: " + body.length);
      send(socket, (head + "\r\n").getBytes(StandardCharsets.UTF_8));
      // Long enough for the request to be taken up; it then waits for its body.
      TimeUnit.MILLISECONDS.sleep(200);
      CompletableFuture<Void> stopped = CompletableFuture.runAsync(served.server()::stop);
      TimeUnit.MILLISECONDS.sleep(200);
      assertThat(stopped).isNotDone();
      send(socket, body);
      String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assertThat(answer).startsWith("HTTP/1.1 201 ");
      stopped.get(20, TimeUnit.SECONDS);
    }
    assertThatThrownBy(() -> new Socket(InetAddress.getLoopbackAddress(), port).close())
        .isInstanceOf(IOException.class);
    served.kitchen().close();
  }

  private static void send(Socket socket, byte[] bytes) throws IOException {
    socket.getOutputStream().write(bytes);
    socket.getOutputStream().flush();
  }
}
