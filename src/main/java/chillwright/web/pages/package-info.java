/**
 * The pages that people use, made on the server: {@code PageRoutes} lists their addresses, a {@code
 * …Page} class answers each, and {@code src/main/jte} holds their templates. {@code Wording} has
 * every text in every language; {@code Visitor} is what a browser told of the person before it.
 */
package chillwright.web.pages;
