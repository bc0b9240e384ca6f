package chillwright.bench;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;

/**
 * One connection that stays open, with as little of a client as can be, so that what is measured is
 * the service. One thread uses it.
 */
final class HttpLine implements AutoCloseable {
  private static final int PATIENCE_MILLIS = 60_000;

  private final int port;
  private final Socket socket;
  private final InputStream in;

  HttpLine(int port) throws IOException {
    this.port = port;
    this.socket = new Socket(InetAddress.getLoopbackAddress(), port);
    socket.setTcpNoDelay(true);
    socket.setSoTimeout(PATIENCE_MILLIS);
    this.in = new BufferedInputStream(socket.getInputStream(), 1 << 16);
  }

  /** What came back. */
  static final class Reply {
    private final int status;
    private final String head;
    private final byte[] body;

    private Reply(int status, String head, byte[] body) {
      this.status = status;
      this.head = head;
      this.body = body;
    }

    int status() {
      return status;
    }

    byte[] body() {
      return body;
    }

    Optional<String> header(String name) {
      String wanted = name.toLowerCase(Locale.ROOT) + ":";
      return head.lines()
          .filter(line -> line.toLowerCase(Locale.ROOT).startsWith(wanted))
          .map(line -> line.substring(wanted.length()).strip())
          .findFirst();
    }

    /** This reply, if it has that status. */
    Reply require(int expected) {
      if (status != expected) {
        throw new IllegalStateException(
            "answered " + status + ": " + new String(body, StandardCharsets.UTF_8));
      }
      return this;
    }
  }

  Reply get(String path, String... headers) throws IOException {
    return send(getRequest(path, headers));
  }

  /** A request that can be sent many times without making it again. */
  byte[] getRequest(String path, String... headers) {
    return ascii("GET " + path + top(headers) + "\r\n");
  }

  Reply post(String path, String json, String key) throws IOException {
    String head =
        top(
            "Content-Type: application/json",
            "Idempotency-Key: " + key,
            "Content-Length: " + json.length());
    return send(ascii("POST " + path + head + "\r\n" + json));
  }

  private String top(String... headers) {
    StringBuilder top = new StringBuilder(" HTTP/1.1\r\nHost: 127.0.0.1:" + port + "\r\n");
    for (String header : headers) {
      top.append(header).append("\r\n");
    }
    return top.toString();
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  Reply send(byte[] request) throws IOException {
    socket.getOutputStream().write(request);
    String head = head();
    int status = Integer.parseInt(head, 9, 12, 10);
    if (status == 204 || status == 304) {
      return new Reply(status, head, new byte[0]);
    }
    int length = length(head);
    return new Reply(status, head, length < 0 ? chunks() : exactly(length));
  }

  private String head() throws IOException {
    ByteArrayOutputStream head = new ByteArrayOutputStream(1024);
    int ends = 0;
    while (ends < 4) {
      int next = in.read();
      if (next < 0) {
        throw new EOFException("the service hung up");
      }
      // Carriage return, line feed, twice.
      ends = next == (ends % 2 == 0 ? '\r' : '\n') ? ends + 1 : 0;
      head.write(next);
    }
    return head.toString(StandardCharsets.ISO_8859_1);
  }

  /** What the head says of the body's length; below 0 if it comes in chunks. */
  private static int length(String head) {
    String name = "content-length:";
    for (int line = head.indexOf('\n'); line >= 0; line = head.indexOf('\n', line + 1)) {
      if (head.regionMatches(true, line + 1, name, 0, name.length())) {
        int end = head.indexOf('\r', line);
        return Integer.parseInt(head.substring(line + 1 + name.length(), end).strip());
      }
    }
    return -1;
  }

  private byte[] exactly(int length) throws IOException {
    byte[] body = in.readNBytes(length);
    if (body.length < length) {
      throw new EOFException("the service hung up within an answer");
    }
    return body;
  }

  private byte[] chunks() throws IOException {
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    for (int size = chunkSize(); size > 0; size = chunkSize()) {
      body.write(exactly(size));
      exactly(2);
    }
    exactly(2);
    return body.toByteArray();
  }

  private int chunkSize() throws IOException {
    StringBuilder size = new StringBuilder();
    for (int next = in.read(); next != '\n'; next = in.read()) {
      if (next < 0) {
        throw new EOFException("the service hung up within an answer");
      }
      size.append((char) next);
    }
    return Integer.parseInt(size.toString().strip(), 16);
  }

  @Override
  public void close() throws IOException {
    socket.close();
  }
}
