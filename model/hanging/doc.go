// Package hanging knows how a resolved set is hung: where the screws of track
// and fascia go and how long they are, what each of them and each hanger bears,
// how hard the top rail is bent and its joints are loaded, how far a header of
// known size sags, and where floor guides and bumpers stand.
//
// Places are X in the set's frame unless they say otherwise. Loads are newtons,
// moments N·mm, stresses MPa, masses kg. A set is taken at rest: doors slammed or
// leant on load it more, which is what the factors are for; each is given beside
// what it was reckoned from.
package hanging
