package main

import (
	"fmt"
	"io"
	"os"
	"strings"
	"sync"
)

// A progress is a line on a terminal that tells what of a run is ready, and
// passes on what else is printed there. On anything but a terminal it only
// passes on.
type progress struct {
	mutex    sync.Mutex
	to       io.Writer
	shown    bool
	all      int
	finished []string
}

// progressOn is a progress of so many steps.
func progressOn(to io.Writer, all int, quiet bool) *progress {
	p := &progress{to: to, all: all}
	if file, is := to.(*os.File); is && !quiet {
		info, err := file.Stat()
		p.shown = err == nil && info.Mode()&os.ModeCharDevice != 0
	}
	p.show()
	return p
}

// Write passes on what is printed, on lines of its own.
func (p *progress) Write(data []byte) (int, error) {
	p.mutex.Lock()
	defer p.mutex.Unlock()
	p.wipe()
	n, err := p.to.Write(data)
	p.show()
	return n, err
}

// ready tells that one step is done.
func (p *progress) ready(step string) {
	p.mutex.Lock()
	defer p.mutex.Unlock()
	p.finished = append(p.finished, step)
	p.wipe()
	p.show()
}

// clear takes the line away.
func (p *progress) clear() {
	p.mutex.Lock()
	defer p.mutex.Unlock()
	p.wipe()
	p.shown = false
}

func (p *progress) show() {
	if p.shown {
		fmt.Fprintf(p.to, "%d of %d ready: %s", len(p.finished), p.all, strings.Join(p.finished, ", "))
	}
}

func (p *progress) wipe() {
	if p.shown {
		fmt.Fprint(p.to, "\r\x1b[K")
	}
}
