package chillwright.core.heat;

import java.util.Objects;

/**
 * Printed months of frozen quality of one food at several temperatures.
 *
 * @param key such as "beef_minced"
 * @param months lives in months
 * @param status verified or reported
 */
public record PrintedLife(
    String key, String title, LifeModel.Table months, String source, String status) {
  public PrintedLife {
    Objects.requireNonNull(key, "key");
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(months, "months");
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(status, "status");
  }
}
