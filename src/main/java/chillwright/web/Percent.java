package chillwright.web;

import chillwright.web.answers.Answers;
import chillwright.web.answers.Answers.Fault;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;

/** Percent-encoded text of an address (RFC 3986 section 2.1), where '+' stands for a blank. */
final class Percent {
  private Percent() {}

  /**
   * @throws RequestFault if it is not well encoded
   */
  static String decoded(String text) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '%') {
        bytes.write(escaped(text, i));
        i += 2;
      } else if (c == '+') {
        bytes.write(' ');
      } else if (c <= 0x20 || c >= 0x7f) {
        throw bad("bad-escape", text, "ASCII, all else percent-encoded");
      } else {
        bytes.write(c);
      }
    }
    return utf8(bytes.toByteArray(), text);
  }

  private static int escaped(String text, int at) {
    int high = at + 2 < text.length() ? Character.digit(text.charAt(at + 1), 16) : -1;
    int low = at + 2 < text.length() ? Character.digit(text.charAt(at + 2), 16) : -1;
    if (high < 0 || low < 0) {
      throw bad("bad-escape", text, "'%' and two hexadecimal digits, such as %20");
    }
    return high * 16 + low;
  }

  private static String utf8(byte[] bytes, String text) {
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      throw bad("not-utf-8", text, "UTF-8, percent-encoded");
    }
  }

  private static RequestFault bad(String code, String text, String allowed) {
    String shown = Shown.text(text);
    return new RequestFault(
        RequestFault.UNREADABLE,
        new Fault(
            code,
            new Answers.InRequest("address"),
            shown,
            allowed,
            "The address cannot be read at \"" + shown + "\"."));
  }
}
