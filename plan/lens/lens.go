// Package lens holds the formulas of the camera: angle of view and exposure. Formulas only.
package lens
