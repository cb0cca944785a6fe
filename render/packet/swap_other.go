//go:build !linux

package packet

// exchange is not to be had here.
func exchange(_, _ string) error { return errNoExchange }

// hold is not to be had here: two runs must not write one packet at a time.
func hold(string) (release func(), err error) { return func() {}, nil }
