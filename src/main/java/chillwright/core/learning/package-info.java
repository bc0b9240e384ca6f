/**
 * What the coolings of a kitchen's own log show of the ways it cools: how often each made its
 * limits, by how much, and how often it missed. It grades the way, never a person, and validates
 * nothing: the authority decides.
 */
package chillwright.core.learning;
