/** What can be asked of a kitchen's log and told to it, one transaction each. */
package chillwright.service;
