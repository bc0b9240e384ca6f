package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.log.Incoming;
import chillwright.logfile.Cells;
import chillwright.logfile.Place;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A report that fails half way must not look whole. */
class CutOffTest {
  /** With notes as long as they may be, more than the buffers of two sockets hold. */
  private static final int LOTS = 1500;

  /** RFC 9112 section 7.1: the chunk that ends a body. */
  private static final String LAST_CHUNK = "0\r\n\r\n";

  @Test
  void a_table_that_is_cut_off_has_no_end(@TempDir Path folder) throws IOException {
    Served served = Served.in(folder);
    served.kitchen().logbook().log(rows(served), Optional.empty());
    served.at("2026-03-03T19:30:00Z");
    String request =
        served.head("GET", "/api/v1/reports/out-of-compliance", "Accept: text/csv") + "\r\n";
    try (Socket socket = new Socket()) {
      socket.setReceiveBufferSize(4096);
      socket.connect(
          new InetSocketAddress(InetAddress.getLoopbackAddress(), served.server().port()));
      socket.getOutputStream().write(request.getBytes(StandardCharsets.UTF_8));
      InputStream in = socket.getInputStream();
      String begun = new String(in.readNBytes(2000), StandardCharsets.UTF_8);
      served.kitchen().close();
      String rest = rest(in);
      assertThat(begun).startsWith("HTTP/1.1 200 ").contains("out_since,lot,");
      assertThat(rest).doesNotEndWith(LAST_CHUNK).doesNotContain("internal-fault");
    }
    served.server().stop();
  }

  private static List<Incoming> rows(Served served) {
    Cells cells = new Cells(served.now());
    List<Incoming> rows = new ArrayList<>();
    for (int i = 0; i < LOTS; i++) {
      Map<String, String> row =
          Map.of(
              "lot", "L-" + i,
              "food", "Barley soup",
              "category", "soup_or_stew",
              "when", "2026-03-03T10:00:00-07:00",
              "entry", "cooked",
              "temperature", "180F",
              "note", "\u00e9".repeat(2000));
      rows.add(cells.read(row, Place.object("/" + i)));
    }
    return rows;
  }

  private static String rest(InputStream in) {
    ByteArrayOutputStream read = new ByteArrayOutputStream();
    try {
      in.transferTo(read);
    } catch (IOException e) {
      // The line went dead: that is the other way to tell that something is missing.
    }
    return read.toString(StandardCharsets.UTF_8);
  }
}
