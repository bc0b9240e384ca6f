/**
 * The database: one SQLite file to a kitchen. {@link chillwright.storage.Migrations} brings its
 * schema up to date; the typed tables in {@code chillwright.storage.schema} are generated from that
 * schema by the build and are seen by this package only.
 */
package chillwright.storage;
