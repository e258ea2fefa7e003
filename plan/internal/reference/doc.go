// Package reference holds, for tests, figures that results are held to: integrals over the sphere, the exchange
// of light between polygons, and a light whose figures are known in closed form. Nothing that ships imports it.
package reference
