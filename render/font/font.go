// Package font measures and outlines the one typeface of a sheet. The default is embedded; the
// system's fonts are never asked.
package font
