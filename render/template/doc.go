// Package template knows which full-size templates a set needs and what is on
// them: story sticks, the rabbet's corner, the panel's corner, the section
// through a stile, the joints, the hangers' holes, the pulls' mortises; and how
// they come together on printed pages.
//
// It takes everything from the set's parts and places, so that a template shows
// what the part has. Each is a finished sheet at 1:1, its origin at the lower
// left, X to the right, Y up. It says which face it shows and from where, and
// the middle of each line is the size.
package template
