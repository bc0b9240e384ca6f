/**
 * Log files in and out: {@link chillwright.logfile.CsvLog} reads a file of comma-separated values
 * (RFC 4180) row by row, {@link chillwright.logfile.Cells} turns the cells of a row, from a file or
 * a request, into a row of the log or into the list of all that is wrong with it, and {@link
 * chillwright.logfile.CsvWriter} writes such files. Whether a row fits what is stored is not
 * decided here but by {@link chillwright.core.log.Intake}.
 */
package chillwright.logfile;
