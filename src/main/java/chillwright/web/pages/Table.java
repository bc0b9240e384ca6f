package chillwright.web.pages;

import chillwright.logfile.CsvWriter;
import io.javalin.http.Context;
import io.javalin.http.Header;
import java.io.IOException;
import java.io.StringWriter;
import java.util.List;

/** A short list as a table that a spreadsheet opens. */
record Table(List<String> header, List<List<String>> rows) {
  Table {
    header = List.copyOf(header);
    rows = List.copyOf(rows);
  }

  /**
   * Answers with it as CSV.
   *
   * @param name of the file, without its ending
   */
  void answer(Context context, String name) throws IOException {
    StringWriter out = new StringWriter();
    CsvWriter csv = CsvWriter.forSpreadsheets(out);
    csv.write(header);
    for (List<String> row : rows) {
      csv.write(row);
    }
    context.contentType("text/csv; charset=utf-8; header=present");
    context.header(Header.CONTENT_DISPOSITION, "attachment; filename=\"" + name + ".csv\"");
    context.result(out.toString());
  }
}
