package chillwright.paper;

import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import java.io.IOException;

/** An address as a QR code (ISO/IEC 18004), drawn as boxes so that it is sharp at any size. */
final class QrCode {
  /** Modules that stay white around it, as the standard asks. */
  private static final int QUIET = 4;

  private final ByteMatrix modules;

  private QrCode(ByteMatrix modules) {
    this.modules = modules;
  }

  static QrCode of(String address) {
    try {
      return new QrCode(Encoder.encode(address, ErrorCorrectionLevel.M).getMatrix());
    } catch (WriterException e) {
      throw new IllegalArgumentException("an address of " + address.length() + " characters", e);
    }
  }

  /** Draws it with its white border into a square. */
  void draw(Pen pen, double x, double y, double side) throws IOException {
    double module = side / (modules.getWidth() + 2 * QUIET);
    for (int row = 0; row < modules.getHeight(); row++) {
      int start = 0;
      while (start < modules.getWidth()) {
        int end = start;
        while (end < modules.getWidth() && modules.get(end, row) == 1) {
          end++;
        }
        if (end > start) {
          double left = x + (QUIET + start) * module;
          pen.box(left, y + (QUIET + row) * module, (end - start) * module, module);
        }
        start = end + 1;
      }
    }
  }
}
