package chillwright.cli;

import picocli.CommandLine.Option;

/** The option that chooses between words for a cook and JSON for a program. */
final class Format {
  /** The two forms of output. */
  enum Kind {
    text,
    json
  }

  @Option(
      names = "--format",
      paramLabel = "text|json",
      description = "Words for a cook (default), or JSON for a program.")
  private Kind kind = Kind.text;

  boolean isJson() {
    return kind == Kind.json;
  }
}
