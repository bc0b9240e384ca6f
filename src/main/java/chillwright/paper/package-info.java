/**
 * What a kitchen prints: labels for lots, and the record for an inspector, as PDF. Begin with
 * {@link chillwright.paper.LabelMaker}, which says what stands on a label, {@link
 * chillwright.paper.LabelSheets}, which places labels on a sheet, and {@link
 * chillwright.paper.RecordPaper}. A {@code Pen} draws, {@code Fonts} finds the glyphs.
 */
package chillwright.paper;
