package chillwright.web;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** One phone for a class of tests, and for each of them a kitchen that the phone is new to. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
abstract class PhoneStories {
  private Browser browser;
  private Served served;
  private int port;

  @BeforeAll
  void turnOn() {
    browser = Browser.start();
  }

  @AfterAll
  void turnOff() {
    if (browser != null) {
      browser.close();
    }
  }

  @BeforeEach
  void serve(@TempDir Path folder) {
    served = Served.in(folder, Browser.options(0));
    port = served.server().port();
    browser.open(port, "/api/v1/health");
    browser.forget();
  }

  @AfterEach
  void stop() {
    served.close();
  }

  Browser phone() {
    return browser;
  }

  Served served() {
    return served;
  }

  int port() {
    return port;
  }

  void open(String address) {
    browser.open(port, address);
  }
}
