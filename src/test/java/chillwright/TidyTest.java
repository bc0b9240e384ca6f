package chillwright;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.LineMap;
import com.sun.source.tree.MethodTree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.SourcePositions;
import com.sun.source.util.TreeScanner;
import com.sun.source.util.Trees;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;

/** The size and shape of the source tree. A fault is written as {@code file:line: what}. */
class TidyTest {
  private static final int FILE_LINES = 400;
  private static final int METHOD_LINES = 60;
  private static final int COLUMNS = 100;

  private static final Path BASE =
      Path.of(System.getProperty("basedir", System.getProperty("user.dir"))).toAbsolutePath();
  private static final Path MAIN = BASE.resolve("src/main/java");
  private static final List<String> GUIDES = List.of("README.md", "DEVELOPERS.md", "SAFETY.md");

  /** Text that people write; samples and pictures may hold what they like. */
  private static final Pattern WRITTEN =
      Pattern.compile(".*\\.(java|sql|ya?ml|xml|md|html|css|js)");

  /** Put together from halves, so that this file does not hold the words itself. */
  private static final Pattern UNFINISHED =
      Pattern.compile("\\b(TO" + "DO|FIX" + "ME|XX" + "X)\\b");

  private static final Pattern LINK = Pattern.compile("]\\(([^)\\s]+)[^)]*\\)");

  @Test
  void the_source_tree_is_found() throws IOException {
    assertThat(files(MAIN, file -> true)).isNotEmpty();
    assertThat(methods(MAIN)).isNotEmpty();
  }

  @Test
  void no_file_is_too_long() throws IOException {
    List<String> faults = new ArrayList<>();
    for (Path file : files(MAIN, TidyTest::isJava)) {
      int length = Files.readAllLines(file).size();
      if (length > FILE_LINES) {
        faults.add(at(file, length) + length + " lines, at most " + FILE_LINES);
      }
    }
    assertThat(faults).isEmpty();
  }

  @Test
  void no_method_is_too_long() throws IOException {
    assertThat(methods(MAIN))
        .filteredOn(method -> method.lines() > METHOD_LINES)
        .extracting(Method::says)
        .isEmpty();
  }

  @Test
  void no_line_is_too_wide() throws IOException {
    // The formatter neither breaks an import nor a long literal: the first is left alone here too.
    assertThat(faults(written(), line -> !line.startsWith("import ") && columns(line) > COLUMNS))
        .filteredOn(fault -> fault.contains(".java:"))
        .isEmpty();
  }

  @Test
  void nothing_holds_a_tab() throws IOException {
    assertThat(faults(written(), line -> line.indexOf('\t') >= 0)).isEmpty();
  }

  @Test
  void nothing_is_left_unfinished() throws IOException {
    assertThat(faults(written(), line -> UNFINISHED.matcher(line).find())).isEmpty();
  }

  @Test
  void links_of_the_guides_lead_somewhere() throws IOException {
    List<String> faults = new ArrayList<>();
    for (Path guide : GUIDES.stream().map(BASE::resolve).filter(Files::exists).toList()) {
      faults.addAll(faults(List.of(guide), line -> !deadLinks(line).isEmpty()));
    }
    assertThat(faults).isEmpty();
  }

  @Test
  void a_dead_link_is_seen_and_a_live_one_is_not() {
    assertThat(deadLinks("[a](no-such.md) ![b](no/such.png \"b\") [c](pom.xml#top)"))
        .containsExactly("no-such.md", "no/such.png");
    assertThat(deadLinks("[a](https://example.org/a) [b](#b) [c](mailto:c@example.org)")).isEmpty();
  }

  /** A method or constructor with a body, counted from its first modifier or annotation. */
  private record Method(Path file, String name, long start, long end) {
    long lines() {
      return end - start + 1;
    }

    String says() {
      return at(file, start) + name + " has " + lines() + " lines, at most " + METHOD_LINES;
    }
  }

  private static List<Method> methods(Path root) throws IOException {
    List<Method> methods = new ArrayList<>();
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    try (StandardJavaFileManager manager =
        compiler.getStandardFileManager(null, null, StandardCharsets.UTF_8)) {
      JavacTask task =
          (JavacTask)
              compiler.getTask(
                  null,
                  manager,
                  null,
                  List.of("-proc:none"),
                  null,
                  manager.getJavaFileObjectsFromPaths(files(root, TidyTest::isJava)));
      SourcePositions positions = Trees.instance(task).getSourcePositions();
      for (CompilationUnitTree unit : task.parse()) {
        unit.accept(new MethodScanner(unit, positions, methods), null);
      }
    }
    return methods;
  }

  private static final class MethodScanner extends TreeScanner<Void, Void> {
    private final CompilationUnitTree unit;
    private final SourcePositions positions;
    private final List<Method> found;

    MethodScanner(CompilationUnitTree unit, SourcePositions positions, List<Method> found) {
      this.unit = unit;
      this.positions = positions;
      this.found = found;
    }

    @Override
    public Void visitMethod(MethodTree method, Void unused) {
      LineMap lines = unit.getLineMap();
      long start = lines.getLineNumber(positions.getStartPosition(unit, method));
      long end = lines.getLineNumber(positions.getEndPosition(unit, method));
      Path file = Path.of(unit.getSourceFile().toUri());
      found.add(new Method(file, method.getName().toString(), start, end));
      return super.visitMethod(method, null);
    }
  }

  /** The targets on one line that name no file, seen from the project's folder. */
  private static List<String> deadLinks(String line) {
    List<String> dead = new ArrayList<>();
    Matcher link = LINK.matcher(line);
    while (link.find()) {
      String target = link.group(1).replaceFirst("#.*", "");
      boolean elsewhere = target.matches("[a-z]+:.*");
      if (!target.isEmpty() && !elsewhere && !Files.exists(BASE.resolve(target))) {
        dead.add(target);
      }
    }
    return dead;
  }

  private static List<String> faults(List<Path> files, Predicate<String> bad) throws IOException {
    List<String> faults = new ArrayList<>();
    for (Path file : files) {
      int number = 0;
      for (String line : Files.readAllLines(file)) {
        number++;
        if (bad.test(line)) {
          faults.add(at(file, number) + line.strip());
        }
      }
    }
    return faults;
  }

  private static List<Path> written() throws IOException {
    List<Path> files = new ArrayList<>(files(BASE.resolve("src"), TidyTest::isWritten));
    files.addAll(files(BASE.resolve("schema"), TidyTest::isWritten));
    files.add(BASE.resolve("pom.xml"));
    GUIDES.stream().map(BASE::resolve).filter(Files::exists).forEach(files::add);
    return files;
  }

  private static List<Path> files(Path root, Predicate<Path> wanted) throws IOException {
    try (Stream<Path> files = Files.walk(root)) {
      return files.filter(Files::isRegularFile).filter(wanted).sorted().toList();
    }
  }

  private static boolean isJava(Path file) {
    return file.toString().endsWith(".java");
  }

  private static boolean isWritten(Path file) {
    return WRITTEN.matcher(file.getFileName().toString()).matches();
  }

  private static int columns(String line) {
    return line.codePointCount(0, line.length());
  }

  private static String at(Path file, long line) {
    return BASE.relativize(file) + ":" + line + ": ";
  }
}
