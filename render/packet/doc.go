// Package packet knows which files a job writes, and how they come to stand in
// one folder, whole: the names allowed, the manifest, and the swap of an old
// packet for a new one.
//
// It does not know how a format is written. A folder is a packet when it holds
// a manifest.json that Write wrote; any other folder with something in it is
// refused.
//
// # Never a mix
//
// Write builds the new packet beside the old one, in
// .stilewright-scrap-NAME, puts it on the disk, and swaps the two folders by
// renaming. At whatever moment the program or the machine stops, the folder is
// the old packet or the new one. Where the file system cannot exchange two
// folders in one step, the old packet stands for a moment under
// .stilewright-swap-NAME; the next Write brings it back.
//
// # Never lost
//
// A file that differs from its manifest was edited by hand; Write refuses and
// names every one. With Options.Replace the edited copy stays beside the new
// file as NAME.edited-1 (2, 3, …). The number stands after the extension on
// purpose: whoever sends *.dxf to the shop does not send the old cut. A file
// Write did not write is carried over into the new packet under its own name,
// or, where a new file takes that name, treated as an edited one.
//
// # The manifest
//
// manifest.json lists the files Write wrote, by name in byte order, each with
// its size in bytes and the SHA-256 of its content in lower-case hexadecimal.
// It lists neither itself nor what was carried over. Same files, same bytes.
package packet
