//go:build race

package golden

// fewer is by how much the sweep over random models is cut where the race
// detector makes every one of them some eight times as slow; cmd/test.sh runs
// the whole sweep without it.
const fewer = 8
