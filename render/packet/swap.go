package packet

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

var (
	errNoExchange = errors.New("this system cannot exchange two folders in one step")
	errHeld       = errors.New("the folder above is still held after half a minute")
)

// recover mends what a stopped run left beside the place.
func (p place) recover() error {
	if err := os.RemoveAll(p.scrap); err != nil {
		return err
	}
	if _, err := os.Lstat(p.swapped); err != nil {
		if errors.Is(err, fs.ErrNotExist) {
			return nil
		}
		return err
	}
	inside, err := os.ReadDir(p.dir)
	switch {
	case err == nil && len(inside) == 0:
		if err := os.Remove(p.dir); err != nil {
			return err
		}
		return os.Rename(p.swapped, p.dir)
	case errors.Is(err, fs.ErrNotExist):
		return os.Rename(p.swapped, p.dir)
	case err != nil:
		return nil // standing tells what stands there instead
	}
	if _, err := readManifest(p.dir); err != nil {
		return nil // standing refuses it; what was put aside stays for its owner
	}
	return p.clear()
}

// swap puts the packet built under scrap into the place. What stood there, if
// anything, is under swapped afterwards.
func (p place) swap(standing bool) error {
	if !standing {
		if err := os.Rename(p.scrap, p.dir); err != nil {
			return errors.Join(err, os.RemoveAll(p.scrap))
		}
		return nil
	}
	if err := os.Rename(p.scrap, p.swapped); err != nil {
		return errors.Join(err, os.RemoveAll(p.scrap))
	}
	err := p.exchange(p.swapped, p.dir)
	if err == nil {
		return nil
	}
	back := os.Rename(p.swapped, p.scrap)
	if back != nil || !errors.Is(err, errNoExchange) {
		return errors.Join(err, back, os.RemoveAll(p.scrap))
	}
	return p.swapInTwo()
}

// swapInTwo is swap where folders cannot be exchanged: the old one aside, the
// new one in. Between the two the old packet stands under swapped.
func (p place) swapInTwo() error {
	if err := os.Rename(p.dir, p.swapped); err != nil {
		return errors.Join(err, os.RemoveAll(p.scrap))
	}
	if err := os.Rename(p.scrap, p.dir); err != nil {
		return errors.Join(err, os.Rename(p.swapped, p.dir), os.RemoveAll(p.scrap))
	}
	return nil
}

// clear removes the packet put aside under swapped, if there is one, after
// saving into the place whatever came into it too late to be carried over.
// Renamed to scrap first, it is never judged again once half removed.
func (p place) clear() error {
	if _, err := os.Lstat(p.swapped); errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	now, err := stateOf(p.dir)
	if err != nil {
		return err
	}
	old, err := stateOf(p.swapped)
	if errors.Is(err, errForeign) { // an empty folder had stood there
		old.items, err = itemsIn(p.swapped)
	}
	if err != nil {
		return err
	}
	for _, k := range old.strays(now) {
		if err := p.save(k); err != nil {
			return err
		}
	}
	if err := os.Rename(p.swapped, p.scrap); err != nil {
		return err
	}
	return os.RemoveAll(p.scrap)
}

// save copies one item into the standing packet, whole or not at all.
func (p place) save(k kept) error {
	if err := carry(k.item, p.scrap); err != nil {
		return err
	}
	to := filepath.Join(p.dir, filepath.FromSlash(k.as))
	if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
		return err
	}
	if err := os.Rename(p.scrap, to); err != nil {
		return err
	}
	return syncDir(filepath.Dir(to))
}
