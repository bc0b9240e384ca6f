/** Everything that speaks HTTP: routes, requests and answers. */
package chillwright.web;
