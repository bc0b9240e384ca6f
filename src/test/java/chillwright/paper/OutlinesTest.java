package chillwright.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import org.apache.fontbox.ttf.OTFParser;
import org.apache.fontbox.ttf.OpenTypeFont;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.markedcontent.PDMarkedContent;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFMarkedContentExtractor;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Letters drawn from PostScript outlines, held against the same letters that their maker gives as
 * TrueType outlines, too (Font Awesome 4.7.0), which the library draws by itself.
 */
class OutlinesTest {
  private static final String FONTS = "/META-INF/resources/webjars/font-awesome/4.7.0/fonts/";
  private static final int SIDE = 200;
  private static final Style LETTERS = Style.plain(100);

  private static RandomAccessReadBuffer font(String name) throws IOException {
    try (InputStream in = OutlinesTest.class.getResourceAsStream(FONTS + name)) {
      return new RandomAccessReadBuffer(in.readAllBytes());
    }
  }

  private static Run outlined(int character) throws IOException {
    OpenTypeFont file = new OTFParser().parse(font("FontAwesome.otf"));
    assertThat(Outlines.isIn(file)).isTrue();
    return new Outlines(file).of(character);
  }

  private static Run written(PDDocument document, int character) throws IOException {
    PDFont font =
        PDType0Font.load(document, new TTFParser().parse(font("fontawesome-webfont.ttf")), true);
    String text = Character.toString(character);
    return new Run.Written(font, text, font.getStringWidth(text) / 1000);
  }

  private static void draw(PDDocument document, Run run) throws IOException {
    PDPage page = new PDPage(new PDRectangle(SIDE, SIDE));
    document.addPage(page);
    try (PDPageContentStream ink = new PDPageContentStream(document, page)) {
      run.draw(ink, 30, 60, LETTERS);
    }
  }

  /** Both pages as a reader sees them, once the document is written. */
  private static List<BufferedImage> seen(PDDocument document) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    document.save(bytes);
    try (PDDocument read = Loader.loadPDF(bytes.toByteArray())) {
      PDFRenderer renderer = new PDFRenderer(read);
      return List.of(renderer.renderImage(0), renderer.renderImage(1));
    }
  }

  private static boolean isInk(BufferedImage image, int x, int y) {
    return (image.getRGB(x, y) & 0xff) < 0x80;
  }

  /** A cup, a flask, a snowflake, a knife and fork: curves, holes, straight lines. */
  @ParameterizedTest
  @ValueSource(ints = {0xf0f4, 0xf0c3, 0xf2dc, 0xf0f5})
  void a_letter_looks_as_it_does_in_the_font_of_the_other_kind(int character) throws IOException {
    try (PDDocument document = new PDDocument()) {
      Run outlined = outlined(character);
      Run written = written(document, character);
      assertThat(outlined.width()).isCloseTo(written.width(), within(0.005));
      draw(document, outlined);
      draw(document, written);
      List<BufferedImage> seen = seen(document);
      BufferedImage ours = seen.get(0);
      BufferedImage theirs = seen.get(1);
      int both = 0;
      int either = 0;
      for (int x = 0; x < SIDE; x++) {
        for (int y = 0; y < SIDE; y++) {
          boolean isOurs = isInk(ours, x, y);
          boolean isTheirs = isInk(theirs, x, y);
          both += isOurs && isTheirs ? 1 : 0;
          either += isOurs || isTheirs ? 1 : 0;
        }
      }
      assertThat(either).isGreaterThan(500);
      assertThat((double) both / either).isGreaterThan(0.97);
    }
  }

  /** ActualText: ISO 32000-1, section 14.9.4. */
  @Test
  void a_letter_drawn_as_a_shape_says_what_it_stands_for() throws IOException {
    try (PDDocument document = new PDDocument()) {
      draw(document, outlined(0xf0f4));
      PDFMarkedContentExtractor reader = new PDFMarkedContentExtractor();
      reader.processPage(document.getPage(0));
      List<PDMarkedContent> parts = reader.getMarkedContents();
      assertThat(parts).extracting(PDMarkedContent::getActualText).containsExactly("\uf0f4");
    }
  }
}
