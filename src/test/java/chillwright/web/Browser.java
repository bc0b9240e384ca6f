package chillwright.web;

import static org.assertj.core.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.abort;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;
import org.openqa.selenium.Alert;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.support.ui.ExpectedCondition;
import org.openqa.selenium.support.ui.Select;
import org.openqa.selenium.support.ui.WebDriverWait;

/**
 * A phone that opens the pages: Chromium without a window, 360 by 740 points, that knows the
 * service by a plain name of a kitchen's network. So it has what such a phone has over plain HTTP:
 * no service worker, no {@code crypto.randomUUID}, no secure cookies.
 */
final class Browser implements AutoCloseable {
  static final String NAME = "kitchen.test";
  static final int WIDTH = 360;

  private static final int HEIGHT = 740;
  private static final Duration PATIENCE = Duration.ofSeconds(30);
  private static final Logger SELENIUM = Logger.getLogger("org.openqa.selenium");

  private final ChromeDriver driver;
  private int touches;

  private Browser(ChromeDriver driver) {
    this.driver = driver;
  }

  /** Starts it; without a browser on this machine the test is skipped, unless CI is set. */
  static Browser start() {
    Optional<File> chromium = program("chromium", "chromium-browser", "google-chrome", "chrome");
    Optional<File> chromedriver = program("chromedriver");
    if (chromium.isEmpty() || chromedriver.isEmpty()) {
      String says =
          "No Chromium with its driver is on the path, so no page is opened in a browser.";
      if (System.getenv("CI") != null) {
        fail(says);
      }
      abort(says);
    }
    SELENIUM.setLevel(Level.SEVERE);
    ChromeOptions options = new ChromeOptions().setBinary(chromium.get());
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-dev-shm-usage",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--lang=en-US",
        "--host-resolver-rules=MAP " + NAME + " 127.0.0.1");
    ChromeDriverService service =
        new ChromeDriverService.Builder().usingDriverExecutable(chromedriver.get()).build();
    Browser browser = new Browser(new ChromeDriver(service, options));
    browser.asPhone();
    return browser;
  }

  private static Optional<File> program(String... names) {
    List<String> folders = List.of(System.getenv("PATH").split(File.pathSeparator));
    return Stream.of(names)
        .flatMap(name -> folders.stream().map(folder -> Path.of(folder, name)))
        .filter(Files::isExecutable)
        .map(Path::toFile)
        .findFirst();
  }

  /** Makes the screen that of a phone again. */
  void asPhone() {
    screen(WIDTH, HEIGHT);
  }

  /** Makes the screen that of a tablet on the wall. */
  void asTablet() {
    screen(1024, 768);
  }

  private void screen(int width, int height) {
    Map<String, Object> size =
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", true);
    driver.executeCdpCommand("Emulation.setDeviceMetricsOverride", size);
  }

  /** Shows pages as they are printed. */
  void asPaper() {
    driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "print"));
  }

  /** Has the person prefer a light or a dark screen. */
  void prefer(String scheme) {
    driver.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of(
            "media",
            "",
            "features",
            List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
  }

  /** What a service must be started with to be reached by the browser's name for it. */
  static Server.Options options(int port) {
    return new Server.Options(Server.LOOPBACK, port, List.of(NAME), false);
  }

  /** Opens a page of the service, as a new visitor where the cookies were forgotten. */
  void open(int port, String address) {
    driver.get("http://" + NAME + ":" + port + address);
    touches = 0;
  }

  void openAddress(String address) {
    driver.get(address);
  }

  /** A new phone. */
  void forget() {
    driver.manage().deleteAllCookies();
  }

  /** How often the screen was touched since a page was opened, the digits left out. */
  int touches() {
    return touches;
  }

  WebElement find(String css) {
    return driver.findElement(By.cssSelector(css));
  }

  List<WebElement> all(String css) {
    return driver.findElements(By.cssSelector(css));
  }

  void tap(WebElement element) {
    script("arguments[0].scrollIntoView({block: 'center'})", element);
    element.click();
    touches++;
  }

  void tap(String css) {
    tap(find(css));
  }

  /** Taps what has that text, such as a link or a button. */
  void tapText(String text) {
    tap(
        driver.findElement(
            By.xpath(
                "//*[self::a or self::button or self::summary or self::label]"
                    + "[normalize-space(.)='%s']".formatted(text))));
  }

  /** Touches a field and types into it. */
  void type(String css, String text) {
    WebElement field = find(css);
    tap(field);
    field.sendKeys(text);
  }

  void choose(String css, String value) {
    new Select(find(css)).selectByValue(value);
    touches++;
  }

  /** What a person sees on the page, without what is folded away. */
  String text() {
    return find("body").getText();
  }

  void waitFor(String text) {
    waitUntil(
        "\"" + text + "\" on the page",
        page -> page.findElement(By.tagName("body")).getText().contains(text));
  }

  void waitForAddress(String part) {
    waitUntil("at " + part, page -> page.getCurrentUrl().contains(part));
  }

  /** Waits until a script of the page, or what it promises, says yes. */
  void waitForScript(String script) {
    waitUntil(script, page -> Boolean.TRUE.equals(driver.executeScript(script)));
  }

  private void waitUntil(String what, ExpectedCondition<Boolean> condition) {
    new WebDriverWait(driver, PATIENCE, Duration.ofMillis(100))
        .ignoring(org.openqa.selenium.WebDriverException.class)
        .withMessage(() -> what + " was waited for in vain; there is: " + text())
        .until(condition);
  }

  /** What a page asks before it goes on; the answer is no. */
  String refuse() {
    Alert asked = driver.switchTo().alert();
    String says = asked.getText();
    asked.dismiss();
    return says;
  }

  String address() {
    return driver.getCurrentUrl();
  }

  void reload() {
    driver.navigate().refresh();
  }

  Object script(String script, Object... arguments) {
    return driver.executeScript(script, arguments);
  }

  /** By how many points the page is wider than the screen, whatever the browser zoomed out to. */
  long tooWide() {
    return (Long) script("return document.documentElement.scrollWidth - screen.width");
  }

  /** What on a page breaks a rule of WCAG 2.2 at the levels A and AA, as far as axe can tell. */
  @SuppressWarnings("unchecked")
  List<String> faults() {
    script(axe());
    Object found =
        driver.executeAsyncScript(
            """
            const done = arguments[0];
            axe.run(document, {runOnly: {type: 'tag',
                values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']}})
              .then(found => done(found.violations.flatMap(fault =>
                fault.nodes.map(node => fault.id + ': ' + node.html.slice(0, 200) + ' '
                    + node.any.map(check => check.message).join(' ')))))
              .catch(broken => done(['axe: ' + broken]));
            """);
    return (List<String>) found;
  }

  private static String axe() {
    try (InputStream file = Browser.class.getResourceAsStream("/axe.min.js")) {
      return new String(file.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() {
    driver.quit();
  }
}
