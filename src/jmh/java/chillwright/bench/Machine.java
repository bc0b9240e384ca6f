package chillwright.bench;

import java.lang.management.ManagementFactory;
import java.util.Locale;

/**
 * The machine in words, without its name. Its load tells whether others were using it, which spoils
 * the figures.
 */
final class Machine {
  private Machine() {}

  static String words() {
    com.sun.management.OperatingSystemMXBean system =
        (com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    return String.format(
        Locale.ROOT,
        "%d cores (%s), %.0f GB of memory, %s, Java %s (%s), load %.1f at the start",
        Runtime.getRuntime().availableProcessors(),
        System.getProperty("os.arch"),
        system.getTotalMemorySize() / 1e9,
        System.getProperty("os.name"),
        System.getProperty("java.version"),
        System.getProperty("java.vm.name"),
        system.getSystemLoadAverage());
  }
}
