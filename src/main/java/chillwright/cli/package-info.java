/** The command line, and the one place where the program starts. */
package chillwright.cli;
