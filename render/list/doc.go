// Package list knows the lists of a takeoff as tables, and how a table is
// written as CSV and as XLSX.
//
// It does not know paper; package layout prints the same tables.
//
// In CSV a size is a plain decimal number in the unit its head names, inches to
// six decimals, which is exact for every 64th: a spreadsheet takes "3/8" for a
// day in August. In XLSX it is a number that is shown as a fraction. Text that
// a spreadsheet would take for a formula gets an apostrophe before it in CSV;
// in XLSX it is text.
package list
