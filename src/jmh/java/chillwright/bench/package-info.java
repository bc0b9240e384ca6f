/**
 * What the program costs, always beside a bare baseline measured in the same run: {@link
 * chillwright.bench.Bench} prints the table. Nothing of this is in the jar.
 */
package chillwright.bench;
