package chillwright.service;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;

/** Changes a database from outside, as no part of the program does. */
final class TamperedFile {
  private TamperedFile() {}

  static void run(Path file, String sql) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      statement.executeUpdate(sql);
    }
  }
}
