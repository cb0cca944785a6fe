// Package catalog knows published numbers and the house's own tables: board
// sizes, woods, sheets, tracks, screws, papers, scales and the like. Every row
// carries its source, edition and place, and how far that is confirmed.
//
// It does not know doors, and it makes no choice: it answers what a name or a
// size stands for. A row is a value; every listing is built anew, so nobody can
// change what another reads. Names are looked up as a person writes them: case,
// spaces, hyphens, commas and the order of the words make no difference.
//
// Sizes are exact lengths. Strengths are MPa (N/mm²), densities kg/m³, masses
// kg, moisture and humidity percent, temperatures °C, shares of one (strain,
// thermal expansion) plain numbers. A figure of 0 in a field documented as
// optional means "not known".
package catalog
