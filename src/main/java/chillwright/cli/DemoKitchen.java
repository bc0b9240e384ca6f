package chillwright.cli;

import chillwright.logfile.CardCells;
import chillwright.logfile.CardFile;
import chillwright.service.CardKind;
import chillwright.service.Kitchen;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What the invented kitchen of the sample logs says of itself. */
final class DemoKitchen {
  private static final String NAME = "Ridge Line mess and ticket counter";

  private DemoKitchen() {}

  static void describe(Kitchen kitchen) {
    kitchen.setUp().name(Map.of("name", NAME));
    for (CardKind kind : CardKind.values()) {
      kitchen.setUp().all(kind, cards(kind));
    }
  }

  private static List<CardCells> cards(CardKind kind) {
    String file = "/sample-logs/kitchen/" + kind.name().toLowerCase(Locale.ROOT) + ".csv";
    try (InputStream bytes = DemoKitchen.class.getResourceAsStream(file)) {
      return CardFile.read(file, bytes, kind.cells()).cards();
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    }
  }
}
